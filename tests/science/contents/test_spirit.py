"""The spirit account balances, whatever was done to the spirit."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.lots.steps import Act, Step
from ledger.science.contents.received import ReceivedLot
from ledger.science.contents.replay import Replay
from ledger.science.contents.spirit import SpiritAccount, account, litres, made_flows, spirit_flows

SPIRIT = ReceivedLot("SP", "spirit", "Spirit", MaterialKind.ETHANOL, Measure.UL, 96.0, "label")
LITRE = 1_000_000


def on(day: int) -> str:
    return f"2026-03-{day:02}T12:00:00Z"


def told(
    own: list[Step], batch: list[Step], first: int, after: int, finished: int | None = None
) -> SpiritAccount:
    replay = Replay({"E": batch}, {"SP": SPIRIT})
    flows = [*spirit_flows(SPIRIT, own), *made_flows("E", replay.happenings("E"))]
    ends = {"E": on(finished)} if finished else {}
    return account(flows, (on(first), on(after)), frozenset({"SP"}), ends)


def came(day: int, amount: int) -> Step:
    return Step(Act.INTO, amount, clock=on(day), outside="supplier")


def back(day: int, amount: int) -> Step:
    return Step(Act.INTO, amount, kind="move", clock=on(day), outside="returned")


def drew(day: int, amount: int) -> Step:
    return Step(Act.OUT, amount, clock=on(day))


def put(day: int, amount: int, *, ran: int | None = None) -> Step:
    kind = "add" if ran is None else "rinse"
    return Step(Act.INTO, amount if ran is None else ran, "SP", amount, kind=kind, clock=on(day))


def test_a_litre_of_96_per_cent_is_0_96_litres_of_pure_alcohol() -> None:
    """By the definition of % vol."""
    assert litres(789.24 * 960) == pytest.approx(0.96)
    found = told([came(2, LITRE)], [], 1, 5)
    assert found.received == pytest.approx(0.96)
    assert found.in_spirit == pytest.approx(0.96)


def test_each_litre_is_told_once_by_what_became_of_it() -> None:
    own = [came(1, 5 * LITRE), drew(2, LITRE), Step(Act.LEVEL, 3_900_000, clock=on(4))]
    batch = [
        put(2, LITRE),
        Step(Act.LEVEL, 900_000, kind="filter", clock=on(3)),
        Step(Act.OUT, 100_000, kind="move", clock=on(4), outside="sale"),
    ]
    found = told(own, batch, 1, 6, finished=3)
    assert found.received == pytest.approx(4.8)
    assert found.used == pytest.approx(0.96)
    assert found.lost == pytest.approx(0.096)
    assert found.sent == {"sale": pytest.approx(0.096)}
    assert found.unexplained == pytest.approx(0.096)
    assert found.in_product == pytest.approx(0.768)
    assert found.difference == pytest.approx(0, abs=1e-9)


def test_a_batch_is_in_the_making_until_it_is_finished() -> None:
    own, batch = [came(1, 5 * LITRE), drew(2, LITRE)], [put(2, LITRE)]
    assert told(own, batch, 1, 4, finished=5).in_making == pytest.approx(0.96)
    assert told(own, batch, 1, 6, finished=5).in_product == pytest.approx(0.96)


def test_what_a_rinse_leaves_in_the_cake_is_lost() -> None:
    found = told([came(1, LITRE), drew(2, 100_000)], [put(2, 100_000, ran=90_000)], 1, 3)
    assert found.lost == pytest.approx(0.0096)


def test_spirit_that_was_bought_sold_and_came_back_is_not_received_twice() -> None:
    """Of a litre sold 400 mL come back on the fourth, 0.384 L of alcohol."""
    own = [came(1, 2 * LITRE), Step(Act.OUT, LITRE, clock=on(3), outside="sale"), back(4, 400_000)]
    found = told(own, [], 1, 6)
    assert found.received == pytest.approx(1.92)
    assert found.sent == {"sale": pytest.approx(0.96), "returned": pytest.approx(-0.384)}
    assert found.in_spirit == pytest.approx(1.344)
    (lot,) = found.lots.values()
    assert lot.received == pytest.approx(1.92)
    assert lot.used == pytest.approx(0)
    assert lot.left == pytest.approx(1.344)
    later = told(own, [], 4, 6)
    assert later.opening == pytest.approx(0.96)
    assert later.received == pytest.approx(0)
    assert later.sent == {"returned": pytest.approx(-0.384)}
    assert later.difference == pytest.approx(0, abs=1e-9)


def test_what_was_sold_of_a_batch_and_came_back_stands_in_a_row_of_its_own() -> None:
    """By hand: half a litre sold is 0.48 L of alcohol, of which 200 mL come back, 0.192 L."""
    batch = [
        put(1, LITRE),
        Step(Act.OUT, 500_000, kind="move", clock=on(3), outside="sale"),
        back(4, 200_000),
    ]
    found = told([came(1, 2 * LITRE), drew(1, LITRE)], batch, 1, 6, finished=2)
    assert found.sent == {"sale": pytest.approx(0.48), "returned": pytest.approx(-0.192)}
    assert found.lost == pytest.approx(0)
    assert found.in_product == pytest.approx(0.672)


@given(
    st.lists(
        st.tuples(
            st.sampled_from(["came", "put", "level", "sold", "count", "back"]), st.integers(1, 10)
        ),
        max_size=15,
    ),
    st.integers(1, 15),
    st.integers(1, 15),
)
def test_the_account_of_any_period_balances(
    moves: list[tuple[str, int]], first: int, length: int
) -> None:
    own: list[Step] = []
    batch: list[Step] = []
    for number, (what, tenths) in enumerate(moves, start=1):
        amount, at = tenths * 100_000, on(number)
        if what == "came":
            own.append(Step(Act.INTO, amount, clock=at, outside="supplier"))
        elif what == "put":
            own.append(Step(Act.OUT, amount, clock=at))
            batch.append(Step(Act.INTO, amount, "SP", amount, kind="add", clock=at))
        elif what == "back":
            own += [Step(Act.OUT, amount, clock=at, outside="sale"), back(number, amount)]
        elif what == "count":
            own.append(Step(Act.LEVEL, amount, clock=at))
        elif what == "level":
            batch.append(Step(Act.LEVEL, amount, kind="filter", clock=at))
        else:
            batch.append(Step(Act.OUT, amount, kind="move", clock=at, outside="sale"))
    found = told(own, batch, first, first + length)
    assert found.difference == pytest.approx(0, abs=1e-9)
