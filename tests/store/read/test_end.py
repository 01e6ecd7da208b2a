"""The end of the book is its last entry, and its edge what later ones stand on."""

from ledger.domain.evidence.merkle import leaf_hash
from ledger.store.read.end import edge_of, end_of, last_recorded
from ledger.store.write.recorder import node
from tests.keeper import Keeper


def test_the_end_is_the_last_entry_with_its_leaf(sqlite_keeper: Keeper) -> None:
    done = sqlite_keeper.do("note", text="Last.")
    number, body = sqlite_keeper.bodies()[-1]
    with sqlite_keeper.reading() as connection:
        last = end_of(connection)
        assert last is not None
        assert (last.seq, last.leaf) == (number, leaf_hash(body.encode()))
        assert last_recorded(connection) == done.entry.recorded_at


def test_the_edge_is_the_largest_complete_nodes_above_the_leaves(sqlite_keeper: Keeper) -> None:
    """RFC 6962, section 2.1: of 22 = 16 + 4 + 2 entries those of 16, 4 and 2 leaves."""
    last = sqlite_keeper.do("note", text="Here.").seq
    while last < 22:
        last = sqlite_keeper.do("note", text="Here.").seq
    with sqlite_keeper.reading() as connection:
        edge = edge_of(connection, 22)
        assert set(edge) == {(4, 0), (2, 4), (1, 10)}
        assert edge == {where: node(connection, *where) for where in edge}
        assert edge_of(connection, 1) == {}
