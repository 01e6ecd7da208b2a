"""How much came out of finished lots, what a bottle holds, and which case is next."""

from ledger.domain.entries.choices import ProductKind
from ledger.store.read.lots import all_lots
from ledger.store.read.made import bottle_sizes, finished, kinds_made, next_case
from tests.keeper import Keeper
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


def test_a_kind_have_lots_that_were_begun_here_and_not_struck(walked: Walked) -> None:
    keeper, lots = walked
    codes = [lots.oil, lots.syrup, lots.packed, lots.essence, "NONE-1"]
    begun = keeper.do("start", product="Mistaken", kind="blend", target="1 L")
    with keeper.reading() as connection:
        told = {lots.essence: ProductKind.ESSENCE, lots.syrup: ProductKind.SYRUP}
        assert kinds_made(connection, codes) == told
        assert kinds_made(connection, [begun.code or ""]) == {begun.code: ProductKind.BLEND}
        assert kinds_made(connection, []) == {}
    keeper.do("strike", entry=str(begun.seq), because="another jar")
    with keeper.reading() as connection:
        assert kinds_made(connection, [begun.code or ""]) == {}


def test_what_was_added_after_the_finish_counts_and_what_was_drawn_does_not(
    walked: Walked,
) -> None:
    keeper, lots = walked
    keeper.do("add", lot=lots.essence, source=lots.spirit, amount="10mL", because="weak")
    with keeper.reading() as connection:
        essence = number(connection, lots.essence)
        assert finished(connection, [essence]) == {essence: 458_000}


def test_no_case_gets_a_number_that_another_had(sqlite_walked: Keeper) -> None:
    def upcoming() -> int:
        with sqlite_walked.reading() as connection:
            return next_case(connection)

    assert upcoming() == 4
    done = sqlite_walked.do("cases", lot="BOS-001-S", pack="2 x 1")
    assert upcoming() == 6
    sqlite_walked.do("correct", entry=str(done.seq), changes="count=1", because="one was not full")
    assert upcoming() == 6
    sqlite_walked.do("strike", entry=str(done.seq + 1), because="nor was the other")
    assert upcoming() == 6
