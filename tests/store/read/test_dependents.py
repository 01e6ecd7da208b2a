"""Everything in force that moves, measures or speaks of a lot."""

from ledger.store.read.dependents import entries_touching
from tests.store.read.numbers import Walked, number


def test_all_that_touches_a_lot_comes_by_when_it_happened(walked: Walked) -> None:
    """The correction of the oil, entry 36, stands where the entry it corrects stood."""
    keeper, lots = walked
    with keeper.reading() as connection:
        found = entries_touching(connection, number(connection, lots.essence))
    assert [entry.seq for entry in found] == [15, 36, *range(17, 26), 29]
    assert found[-1].draft.lot == lots.syrup


def test_what_is_struck_touches_nothing(walked: Walked) -> None:
    keeper, lots = walked
    keeper.do("strike", entry="29", because="another syrup")
    with keeper.reading() as connection:
        found = entries_touching(connection, number(connection, lots.essence))
    assert 29 not in [entry.seq for entry in found]
