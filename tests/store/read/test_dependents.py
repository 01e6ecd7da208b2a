"""Everything in force that moves, measures or speaks of a lot."""

from ledger.store.read.dependents import Changed, changed_since, entries_touching
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


def test_what_was_put_right_after_a_release_is_told_of_the_lots_and_kinds_that_count(
    walked: Walked,
) -> None:
    """Of an essence of which an addition was corrected already, by entry 36."""
    keeper, lots = walked
    release = next(
        e.seq for e in keeper.entries() if e.kind == "judge" and e.draft.lot == lots.essence
    )
    keeper.do("strike", entry="22", because="another jar")
    keeper.do("strike", entry="29", because="another jar")
    late = keeper.do("look", lot=lots.essence, grade="clear")
    keeper.do("strike", entry=str(late.seq), because="another jar")
    with keeper.reading() as connection:
        ids = [number(connection, code) for code in (lots.syrup, lots.essence)]
        told = [
            changed_since(connection, of, release, kinds)
            for of, kinds in (
                (ids, ("add", "look", "makeup", "filter")),
                (ids[1:], ("add",)),
                (ids[:1], ("add",)),
                (ids, ("finish",)),
            )
        ]
    oil, look = Changed(36, False, 16, lots.essence), Changed(37, True, 22, lots.essence)
    assert told == [(oil, look), (oil,), (), ()]
