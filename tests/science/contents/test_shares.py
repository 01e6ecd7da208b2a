"""Shares follow what was there at each draw, forward and back alike.

What they should come to is told by carrying a note of every origin along with each liquid, jar by
jar, which is another way than either walk goes.
"""

from collections.abc import Mapping
from math import isclose

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.lots.steps import Act
from ledger.science.contents.replay import TO_PEOPLE, Happening
from ledger.science.contents.shares import Carrying, Shares, Stays, stays_as, told_at
from ledger.science.contents.shares_ahead import ahead
from ledger.science.contents.shares_behind import behind
from tests.science.contents.test_replay import RECEIVED, Bench
from tests.science.liquids.liquid_rows import ML

Happened = dict[str, tuple[Happening, ...]]
ACTS = ["in", "in", "over", "over", "over", "rinse", "cake", "filter", "makeup", "out", "back"]
STEPS = st.lists(
    st.tuples(
        st.sampled_from(ACTS),
        st.integers(0, 4),
        st.integers(0, 4),
        st.sampled_from(["SPIRIT", "OIL", "SUGAR", "WATER", "CARB"]),
        st.integers(1, 100),
    ),
    max_size=30,
)
"""What is done, two numbers that choose lots, a delivery and an amount."""


def played(bench: Bench) -> Happened:
    replay = bench.replay()
    replay.play(list(bench.steps))
    return {code: replay.happenings(code) for code in replay.order}


def back_from(bench: Bench, lot: str) -> Shares:
    return behind(lot, played(bench), RECEIVED)


def on_from(bench: Bench, lot: str) -> Shares:
    own = RECEIVED.get(lot)
    return ahead(lot, played(bench), stays_as(own.sort) if own else Stays.IN_LIQUID)


def percent(found: Carrying) -> float:
    return 100 * found.amount / found.whole


@pytest.fixture
def bench() -> Bench:
    return Bench()


def test_what_left_before_it_came_was_never_in_it(bench: Bench) -> None:
    """A tank: 500 mL of one water, half of it drawn, then 250 mL of another put in."""
    bench.put("FIRST", "WATER", 500)
    bench.put("SECOND", "WATER", 250)
    bench.put("TANK", "FIRST", 500)
    bench.put("JAR", "TANK", 250)
    bench.put("TANK", "SECOND", 250)
    bench.put("LATER", "TANK", 100)
    assert set(on_from(bench, "SECOND").lots) == {"TANK", "LATER"}
    assert set(back_from(bench, "JAR").lots) == {"TANK", "FIRST", "WATER"}
    for lot in ("TANK", "LATER"):
        assert percent(on_from(bench, "SECOND").lots[lot]) == pytest.approx(50)
        assert percent(back_from(bench, lot).lots["SECOND"]) == pytest.approx(50)
    assert percent(back_from(bench, "JAR").lots["FIRST"]) == pytest.approx(100)


def test_a_tank_that_was_emptied_passes_nothing_on_of_what_it_held(bench: Bench) -> None:
    bench.put("FIRST", "SPIRIT", 500)
    bench.put("TANK", "FIRST", 500)
    bench.put("JAR", "TANK", 500)
    bench.put("TANK", "WATER", 100)
    bench.put("LATER", "TANK", 50)
    found = on_from(bench, "FIRST")
    assert set(found.lots) == {"TANK", "JAR"}
    assert found.lots["TANK"].amount == 0
    assert found.ways == {("FIRST", "TANK"): 500 * ML, ("TANK", "JAR"): 500 * ML}
    assert set(back_from(bench, "LATER").lots) == {"TANK", "WATER"}


def test_a_clarifier_touches_what_it_clears_and_is_not_in_it(bench: Bench) -> None:
    bench.put("E", "OIL", 30)
    bench.put("E", "CARB", 15, given=0)
    bench.put("E", "SPIRIT", 450)
    bench.level("E", 455, "filter")
    bench.put("S", "E", 30)
    assert set(on_from(bench, "CARB").lots) == {"E", "S"}
    for found in (on_from(bench, "CARB").lots["E"], back_from(bench, "S").lots["CARB"]):
        assert (found.amount, found.is_all) == (0, True)


def test_a_bottle_is_round_what_it_holds_and_not_in_what_that_is_poured_into(
    bench: Bench,
) -> None:
    bench.put("S", "WATER", 1000)
    bench.put("P", "S", 750, given=3_000_000, kind="bottle")
    bench.put("P", "BOTTLES", 3000, given=0, kind="bottle")
    bench.put("BLEND", "P", 2000)
    assert back_from(bench, "P").lots["BOTTLES"].amount == 3_000_000
    found = on_from(bench, "BOTTLES").lots["BLEND"]
    assert found == back_from(bench, "BLEND").lots["BOTTLES"]
    assert (found.amount, found.is_all) == (0, True)


def test_what_the_filter_kept_takes_its_share_and_the_figures_are_those_of_the_lot(
    bench: Bench,
) -> None:
    bench.put("E", "OIL", 30)
    bench.put("E", "SPIRIT", 450)
    bench.level("E", 400, "filter")
    bench.put("E", "SPIRIT", 50, kind="makeup")
    bench.level("E", 450, "makeup")
    contents = bench.of("E")
    oil = contents.oils()["lemon-oil"].volume_ul / contents.volume_ul
    assert percent(back_from(bench, "E").lots["OIL"]) == pytest.approx(100 * oil)
    bench.put("S", "E", 450)
    assert percent(on_from(bench, "OIL").lots["S"]) == pytest.approx(100 * oil)


def test_of_a_rinse_only_what_ran_through_is_in_the_batch(bench: Bench) -> None:
    bench.put("E", "WATER", 80)
    bench.put("E", "SPIRIT", 30, given=20_000, kind="rinse")
    assert back_from(bench, "E").lots["SPIRIT"].amount == pytest.approx(20_000)


def test_where_more_ran_through_a_cake_than_was_put_on_the_share_of_what_was_there_is_at_least(
    bench: Bench,
) -> None:
    bench.put("E", "WATER", 80)
    bench.put("E", "SPIRIT", 30, given=40_000, kind="rinse")
    for lot, is_all in (("WATER", False), ("SPIRIT", True)):
        assert on_from(bench, lot).lots["E"].is_all is is_all
        assert back_from(bench, "E").lots[lot].is_all is is_all


def test_an_old_cake_can_hold_what_was_there_when_it_was_filtered_and_no_more(
    bench: Bench,
) -> None:
    bench.put("OLD", "OIL", 30)
    bench.level("OLD", 25, "filter")
    bench.put("OLD", "SPIRIT", 100)
    bench.put("E", "WATER", 100)
    bench.put("E", "OLD", 0, kind="filter")
    bench.level("E", 90, "filter")
    assert set(back_from(bench, "E").lots) == {"OLD", "OIL", "WATER"}
    assert set(on_from(bench, "SPIRIT").lots) == {"OLD"}
    found = on_from(bench, "OIL").lots["E"]
    assert found == back_from(bench, "E").lots["OIL"]
    assert (found.amount, found.is_all) == (0, False)
    assert back_from(bench, "E").lots["WATER"].is_all


def test_goods_that_come_back_bring_what_went_out_with_them(bench: Bench) -> None:
    bench.put("S", "SPIRIT", 500)
    bench.put("P", "S", 500, given=2_000_000, kind="bottle")
    bench.out("P", 2_000_000)
    bench.back("P", 1_000_000)
    bench.put("BLEND", "P", 1000)
    found = on_from(bench, "SPIRIT").lots["BLEND"]
    assert found.is_all
    assert found.amount == pytest.approx(250_000)
    assert back_from(bench, "BLEND").lots["SPIRIT"].amount == pytest.approx(250_000)


def test_goods_that_come_back_in_two_turns_bring_each_what_went_out_with_them(
    bench: Bench,
) -> None:
    bench.put("S", "SPIRIT", 500)
    bench.put("P", "S", 500, given=2_000_000, kind="bottle")
    bench.out("P", 2_000_000)
    for blend in ("FIRST", "SECOND"):
        bench.back("P", 1_000_000)
        bench.put(blend, "P", 1000)
    for blend in ("FIRST", "SECOND"):
        assert on_from(bench, "SPIRIT").lots[blend].amount == pytest.approx(250_000)
        assert back_from(bench, blend).lots["SPIRIT"].amount == pytest.approx(250_000)


def test_what_comes_back_though_none_is_known_to_be_out_is_as_the_lot_was_last(
    bench: Bench,
) -> None:
    """All was thrown away, and then some of it is there again."""
    bench.put("S", "SPIRIT", 500)
    bench.out("S", 500 * ML, where="waste")
    bench.back("S", 100 * ML)
    bench.put("BLEND", "S", 50)
    for found in (on_from(bench, "SPIRIT").lots["BLEND"], back_from(bench, "BLEND").lots["SPIRIT"]):
        assert percent(found) == pytest.approx(100)
        assert found.is_all


def test_ways_tell_all_that_went_in_one_direction(bench: Bench) -> None:
    bench.put("TANK", "WATER", 500)
    for ml in (50, 30):
        bench.put("JAR", "TANK", ml)
    ways = {("WATER", "TANK"): 500 * ML, ("TANK", "JAR"): 80 * ML}
    assert (back_from(bench, "JAR").ways, on_from(bench, "WATER").ways) == (ways, ways)


def test_where_more_was_drawn_than_was_there_a_share_is_at_least(bench: Bench) -> None:
    bench.put("E", "WATER", 100)
    bench.put("S", "E", 150)
    assert on_from(bench, "WATER").lots["S"].is_all is False
    assert back_from(bench, "S").lots["WATER"].is_all is False
    assert back_from(bench, "S").lots["E"].is_all is True


def test_a_chain_of_thousands_is_reckoned(bench: Bench) -> None:
    bench.put("L0", "WATER", 1)
    for number in range(1, 3000):
        bench.put(f"L{number}", f"L{number - 1}", 1)
    assert on_from(bench, "WATER").lots["L2999"].amount == pytest.approx(1000)
    assert back_from(bench, "L2999").lots["WATER"].amount == pytest.approx(1000)


def book_of(steps: list[tuple[str, int, int, str, int]]) -> Bench:
    bench = Bench()
    for what, one, two, source, amount in steps:
        low, high = f"L{min(one, two)}", f"L{max(one, two)}"
        if what == "in":
            bench.put(low, source, amount, given=0 if source in ("SUGAR", "CARB") else None)
        elif what == "makeup":
            bench.put(low, "WATER", amount, kind="makeup")
            bench.level(low, amount * 2, "makeup")
        elif what == "rinse":
            bench.put(low, "SPIRIT", amount, given=amount * 900, kind="rinse")
        elif what == "filter":
            bench.level(low, amount, "filter")
        elif what in ("over", "cake") and low != high:
            bench.put(high, low, amount if what == "over" else 0, kind="add")
        elif what == "out":
            bench.out(low, amount * ML)
        elif what == "back":
            bench.back(low, amount * ML)
    return bench


def noted(happened: Happened) -> dict[str, dict[str, float]]:
    """Return what of every lot is in each when it is told, origin by origin."""
    draws: dict[str, dict[int, dict[str, float]]] = {}
    told: dict[str, dict[str, float]] = {}
    for code, items in happened.items():
        there: dict[str, float] = {}
        last: dict[str, float] = {}
        out: dict[str, float] = {}
        drawn: dict[int, dict[str, float]] = {}
        for index, item in enumerate(items):
            step = item.step
            if step.act is Act.INTO:
                if step.outside:
                    came = times(out, item.passed)
                    # Of what the book does not know to be out, as it was last.
                    add_to(came, times(last, item.beyond))
                    out = times(out, 1 - item.passed)
                else:
                    came = times(came_by(item, draws), item.passed)
                add_to(there, came)
            elif step.act is Act.OUT:
                drawn[index] = times(there, item.passed)
                if step.outside in TO_PEOPLE:
                    add_to(out, drawn[index])
            there = times(there, item.kept)
            last = dict(there) if item.after.volume_ul > 0 else last
            if index == told_at(items):
                told[code] = dict(there)
        draws[code] = drawn
    return told


def times(amounts: Mapping[str, float], factor: float) -> dict[str, float]:
    return {lot: amount * factor for lot, amount in amounts.items()}


def add_to(amounts: dict[str, float], more: Mapping[str, float]) -> None:
    for lot, amount in more.items():
        amounts[lot] = amounts.get(lot, 0.0) + amount


def came_by(item: Happening, draws: dict[str, dict[int, dict[str, float]]]) -> dict[str, float]:
    source = item.step.source or ""
    came = dict(draws.get(source, {}).get(item.step.draw, {}))
    own = RECEIVED.get(source)
    counts = own is None or stays_as(own.sort) is Stays.IN_LIQUID
    came[source] = item.step.taken if counts else 0.0
    return came


@given(steps=STEPS)
def test_both_walks_tell_what_notes_of_every_origin_tell(
    steps: list[tuple[str, int, int, str, int]],
) -> None:
    happened = played(book_of(steps))
    told = noted(happened)
    back = {lot: behind(lot, happened, RECEIVED).lots for lot in happened}
    for start in {*happened, *RECEIVED}:
        own = RECEIVED.get(start)
        found = ahead(start, happened, stays_as(own.sort) if own else Stays.IN_LIQUID).lots
        assert {lot for lot in happened if start in back[lot]} == set(found)
        for lot, share in found.items():
            assert isclose(share.amount, told[lot].get(start, 0.0), rel_tol=1e-9, abs_tol=1e-6)
            turned = back[lot][start]
            assert isclose(share.amount, turned.amount, rel_tol=1e-9, abs_tol=1e-6)
            assert (share.whole, share.is_all) == (turned.whole, turned.is_all)


@given(steps=STEPS)
def test_no_share_is_above_all_of_it(steps: list[tuple[str, int, int, str, int]]) -> None:
    """But of solids, and where a make-up or a reading left less than went in."""
    happened = played(book_of([step for step in steps if step[0] not in ("makeup", "filter")]))
    for lot in happened:
        for source, share in behind(lot, happened, RECEIVED).lots.items():
            if source not in ("SUGAR", "CARB") and share.is_all:
                assert share.amount <= share.whole * 1.03
