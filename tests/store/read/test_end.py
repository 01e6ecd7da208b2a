"""The end of the book is its last entry."""

from ledger.domain.evidence.merkle import leaf_hash
from ledger.store.read.end import end_of, last_recorded
from tests.keeper import Keeper


def test_the_end_is_the_last_entry_with_its_leaf(sqlite_keeper: Keeper) -> None:
    done = sqlite_keeper.do("note", text="Last.")
    number, body = sqlite_keeper.bodies()[-1]
    with sqlite_keeper.reading() as connection:
        last = end_of(connection)
        assert last is not None
        assert (last.seq, last.leaf) == (number, leaf_hash(body.encode()))
        assert last_recorded(connection) == done.entry.recorded_at
