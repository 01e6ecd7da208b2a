"""How much came out of finished lots, and what a bottle holds."""

from ledger.store.read.lots import all_lots
from ledger.store.read.made import bottle_sizes, finished
from tests.store.read.numbers import Walked, number


def test_only_finished_lots_have_what_came_out_and_packed_ones_a_size(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        everything = all_lots(connection)
        came_out = finished(connection, everything)
        sizes = bottle_sizes(connection, everything)
        essence, syrup = number(connection, lots.essence), number(connection, lots.syrup)
        packed = number(connection, lots.packed)
    assert came_out == {essence: 448_000, syrup: 3_800_000}
    assert sizes == {packed: 250_000}


def test_what_was_added_after_the_finish_counts_and_what_was_drawn_does_not(
    walked: Walked,
) -> None:
    keeper, lots = walked
    keeper.do("add", lot=lots.essence, source=lots.spirit, amount="10mL", because="weak")
    with keeper.reading() as connection:
        essence = number(connection, lots.essence)
        assert finished(connection, [essence]) == {essence: 458_000}
