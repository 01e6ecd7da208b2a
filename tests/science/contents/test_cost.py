"""Costs: from the receipts really drawn, exact to the last billionth of a hundredth."""

from collections import defaultdict
from collections.abc import Mapping, Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from ledger.domain.lots.steps import Act, Bought, Step
from ledger.science.contents.cost import (
    DUTY,
    LABOUR,
    NANO,
    Cost,
    Reckoner,
    _divided,
    in_coins,
    of_bought,
    price_for_margin,
)
from ledger.science.contents.replay import Replay
from tests.science.liquids.liquid_rows import CARBONATE, SUGAR, WATER, oil, spirit

OIL = Bought(500_000, 15_000)
"""500 mL for 150.00."""
SPIRIT = Bought(5_000_000, 19_000, duty_minor=11_000)
"""5 L for 190.00, of it 110.00 duty."""
BOUGHT = {"OIL": OIL, "SPIRIT": SPIRIT, "CARB": Bought(1_000_000, 4_000), "GIFT": Bought(10, None)}
RECEIVED = {
    "OIL": replace(oil(), code="OIL"),
    "SPIRIT": replace(spirit(96), code="SPIRIT"),
    "CARB": CARBONATE,
    "GIFT": replace(WATER, code="GIFT"),
    "SUGAR": SUGAR,
}


def into(source: str, taken: int, given: int | None = None, draw: int = 0) -> Step:
    return Step(Act.INTO, taken if given is None else given, source, taken, draw)


def reckoner(steps: Mapping[str, Sequence[Step]], hour_minor: int | None = None) -> Reckoner:
    replay = Replay(steps, RECEIVED)
    replay.play(list(steps))
    happened = {code: replay.happenings(code) for code in replay.order}
    return Reckoner(happened, BOUGHT, hour_minor)


def reckon(*steps: Step, hour_minor: int | None = None) -> Cost:
    return reckoner({"E": steps}, hour_minor).cost("E")


def test_a_batch_costs_what_went_into_it_with_duty_and_work_apart() -> None:
    """The worked structure of the trade, with illustrative prices: arithmetic done by hand.

    9.00 of oil, 17.10 of spirit, 0.60 of carbonate, 54 min at 20.00 an hour: 18.00.
    """
    found = reckon(
        into("OIL", 30_000),
        into("SPIRIT", 450_000),
        into("CARB", 15_000, given=0),
        Step(Act.LEVEL, 420_000),
        Step(Act.WORK, 54),
        hour_minor=2000,
    )
    assert in_coins(found.money) == {
        "OIL": 900,
        "SPIRIT": 720,
        DUTY: 990,
        "CARB": 60,
        LABOUR: 1800,
    }
    assert found.total == 4470 * NANO
    assert (found.there, found.went_in) == (420_000, 480_000)


def test_a_lot_of_which_nothing_is_left_costs_what_it_did_when_something_was_last_there() -> None:
    """Work on an empty vessel is of no lot that anybody has; one never filled has it anyhow."""
    oil_in = into("OIL", 100_000)
    emptied = reckon(oil_in, Step(Act.LEVEL, 0), Step(Act.WORK, 60), hour_minor=100)
    assert emptied == reckon(oil_in)
    assert reckon(Step(Act.WORK, 60), hour_minor=100).total == 100 * NANO


def test_what_is_lost_makes_the_rest_dearer() -> None:
    whole = reckon(into("OIL", 100_000))
    lossy = reckon(into("OIL", 100_000), Step(Act.LEVEL, 50_000))
    assert lossy.total == whole.total
    assert lossy.there * 2 == whole.there


def test_a_draw_takes_its_share_and_leaves_the_rest() -> None:
    steps = {
        "E": (into("OIL", 100_000), Step(Act.OUT, 30_000), into("SPIRIT", 30_000)),
        "S": (into("E", 30_000, draw=1),),
    }
    found = reckoner(steps)
    assert found.cost("S").money == {"OIL": 900 * NANO}
    assert found.cost("E").money["OIL"] == 2100 * NANO


def test_what_has_no_price_is_named_and_counts_as_nothing() -> None:
    found = reckon(into("OIL", 10_000), into("GIFT", 5))
    assert found.unpriced == {"GIFT"}
    assert found.total == 300 * NANO


def test_goods_that_come_back_bring_back_what_they_cost() -> None:
    returned = (into("OIL", 10_000), sold(10_000), back(5_000))
    steps = {"E": (*returned, Step(Act.OUT, 4_000)), "S": (into("E", 4_000, draw=3),)}
    assert reckoner(steps).cost("S").total == 120 * NANO


def test_what_comes_back_comes_back_at_the_price_it_went_out_at() -> None:
    """100 mL for 30.00; 40 sold, 10 of the rest lost, so that it is dearer; 20 come back."""
    steps = {
        "E": (
            into("OIL", 100_000),
            sold(40_000),
            Step(Act.LEVEL, 50_000, kind="count"),
            back(20_000),
            Step(Act.OUT, 70_000),
        ),
        "S": (into("E", 70_000, draw=4),),
    }
    assert reckoner(steps).cost("S").total == (1800 + 600) * NANO


def test_a_rinse_to_waste_is_paid_by_the_lot_it_rinsed() -> None:
    found = reckon(into("OIL", 10_000), Step(Act.SPENT, 0, "SPIRIT", 50_000, kind="rinse"))
    assert found.total == (300 + 190) * NANO
    assert (found.there, found.went_in) == (10_000, 10_000)


def test_an_old_cake_of_a_lot_that_is_used_up_brings_none_of_its_money() -> None:
    steps = {
        "E": (into("OIL", 10_000), sold(10_000), Step(Act.OUT, 0, kind="filter")),
        "S": (into("SPIRIT", 100_000), into("E", 0, draw=2)),
    }
    assert reckoner(steps).cost("S").total == 380 * NANO


def test_a_syrup_that_is_not_finished_costs_by_the_volume_that_is_there() -> None:
    """Sugar fills space: 1 kg of it and 100 mL of oil are no 100 mL."""
    steps = {
        "S": (into("SUGAR", 1_000_000, given=0), into("OIL", 100_000), Step(Act.OUT, 143_500)),
        "T": (into("S", 143_500, draw=2),),
    }
    there = reckoner({"S": steps["S"][:2]}).cost("S").there
    assert there > 600_000
    found = reckoner(steps).cost("T").total
    assert found == pytest.approx(3000 * NANO * 143_500 / there, rel=1e-5)


def sold(amount: int) -> Step:
    return Step(Act.OUT, amount, kind="move", outside="sale")


def back(amount: int) -> Step:
    return Step(Act.INTO, amount, kind="move", outside="returned")


def test_goods_that_come_back_leave_the_cost_of_the_run_as_it_was() -> None:
    run = reckon(into("OIL", 10_000))
    found = reckon(into("OIL", 10_000), sold(9_000), back(5_000))
    assert (found.total, found.there) == (run.total, run.there) == (300 * NANO, 10_000)


def test_a_received_lot_costs_what_was_paid_for_it() -> None:
    assert reckoner({}).cost("SPIRIT").total == 19_000 * NANO


@pytest.mark.parametrize(
    ("cost", "margin", "price"),
    [(300, 40_000, 500), (145, 60_000, 362), (145, 0, 145), (300_000, 40_000, 500_000)],
)
def test_a_margin_is_a_share_of_the_price(cost: int, margin: int, price: int) -> None:
    assert price_for_margin(cost, margin) == price


def test_just_a_half_goes_to_the_even_neighbour() -> None:
    assert [_divided(halves, 2) for halves in (1, 3, 5, 7, 9, 11)] == [0, 2, 2, 4, 4, 6]
    assert [_divided(thirds, 3) for thirds in (13, 14, 16)] == [4, 5, 5]


@given(st.dictionaries(st.text("abc", min_size=1), st.integers(0, 10**15), max_size=8))
def test_the_lines_add_up_to_the_total_to_the_hundredth(money: dict[str, int]) -> None:
    cents = in_coins(money)
    assert abs(sum(cents.values()) * NANO - sum(money.values())) * 2 <= NANO
    assert all(abs(cents[key] * NANO - value) < NANO for key, value in money.items())


@given(
    st.lists(
        st.tuples(st.integers(0, 3), st.integers(0, 3), st.booleans(), st.integers(1, 50_000)),
        max_size=25,
    )
)
def test_what_was_paid_is_found_again_in_what_is_left_and_what_was_drawn(
    moves: list[tuple[int, int, bool, int]],
) -> None:
    """Rework and rinses are counted once, whatever the way: nothing is lost to rounding."""
    steps: dict[str, list[Step]] = defaultdict(list)
    paid = 0
    for one, two, is_bought, amount in moves:
        low, high = f"L{min(one, two)}", f"L{max(one, two)}"
        if is_bought or low == high:
            steps[low].append(into("SPIRIT", amount))
            paid += reckon(into("SPIRIT", amount)).total
        else:
            steps[low].append(Step(Act.OUT, amount))
            steps[high].append(into(low, amount, draw=len(steps[low]) - 1))
    closed = {lot: [*items, Step(Act.LEVEL, 1)] for lot, items in steps.items()}
    found = reckoner(closed)
    assert sum(found.cost(lot).total for lot in closed) == paid


def test_a_second_draw_costs_its_own_share_of_what_the_first_left() -> None:
    """100 mL for 30.00: 30 mL first, 10 lost, then half of the 60 that are left, dearer."""
    steps = {
        "E": (
            into("OIL", 100_000),
            Step(Act.OUT, 30_000),
            Step(Act.LEVEL, 60_000),
            Step(Act.OUT, 30_000),
        ),
        "S": (into("E", 30_000, draw=1), into("E", 30_000, draw=3)),
    }
    found = reckoner(steps)
    assert found.cost("S").money == {"OIL": (900 + 1050) * NANO}
    left = found.left("E", 30_000)
    assert (left.money, left.there, left.went_in) == ({"OIL": 1050 * NANO}, 30_000, 35_000)


def test_goods_come_back_once_at_their_price_and_beyond_that_at_the_lot_s() -> None:
    """10 mL for 3.00: 6 go out and come back in two turns of 3; the next 2 nobody knows of."""
    begun = (into("OIL", 10_000), sold(6_000))
    cents = [
        reckoner({"E": (*begun, *turns)}).left("E", 0).total / NANO
        for turns in ((), (back(3_000),), (back(3_000),) * 2, (*(back(3_000),) * 2, back(2_000)))
    ]
    assert cents == [120, 210, 300, 360]
    whole = reckoner({"E": (*begun, back(3_000))}).left("E", 0)
    assert (whole.there, whole.went_in) == (7_000, 7_000)


def test_goods_that_come_back_to_a_lot_of_which_nothing_ever_was_there_bring_no_money() -> None:
    """54 min at 20.00 an hour stay 18.00."""
    found = reckoner({"E": (Step(Act.WORK, 54), back(5_000))}, 2_000).left("E", 0)
    assert (found.money, found.went_in) == ({LABOUR: 1_800 * NANO}, 5_000)


def test_a_lot_to_which_nothing_happened_costs_nothing() -> None:
    assert reckoner({"E": ()}).cost("E") == Cost(0, 0)
    assert reckoner({"E": ()}).left("E", 5) == Cost(0, 0)


def test_money_of_other_digits_is_counted_in_hundredths() -> None:
    """By hand: 5 L for 19.000 of three digits, of it 11.000 duty; 19 of none; half is taken."""
    three = of_bought("S", Bought(5_000_000, 19_000, 11_000, 3), 2_500_000)
    assert three.money == {"S": 400 * NANO, DUTY: 550 * NANO}
    assert of_bought("S", Bought(5_000_000, 19, 0, 0), 2_500_000).money == {"S": 950 * NANO}
    assert (three.there, three.went_in) == (2_500_000, 2_500_000)
    assert three.drawn == {"S": 2_500_000 * NANO}


def test_what_is_drawn_is_rounded_half_to_even() -> None:
    """By hand: 0.05 of money over 10¹¹ is half of a billionth of a hundredth a unit."""
    bought = Bought(10**10, 5)
    assert [of_bought("S", bought, taken).total for taken in (1, 3, 5, 2)] == [0, 2, 2, 1]
