"""The dates of lots, reckoned when they are asked for."""

from datetime import date

from ledger.service.account.dates import dates_of, with_dates
from ledger.store.read.lots import lots_by_number
from tests.keeper import Keeper
from tests.path import Lots
from tests.store.read.numbers import number


def test_a_lot_keeps_no_longer_than_what_it_is_made_of_and_a_correction_moves_it(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked

    def best_before() -> date | None:
        with keeper.reading() as connection:
            packed = number(connection, lots.packed)
            return dates_of(connection, [packed])[packed].best_before

    assert best_before() == date(2027, 6, 30)
    receipt = next(entry.seq for entry in keeper.entries() if entry.kind == "receipt")
    changes = "best-before=2026-12-31"
    keeper.do("correct", entry=str(receipt), changes=changes, because="read again")
    assert best_before() == date(2026, 12, 31)


def test_lots_in_brief_are_given_the_date_that_is_reckoned(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        essence, sugar = number(connection, lots.essence), number(connection, lots.sugar)
        found = with_dates(connection, lots_by_number(connection, [essence, sugar]))
    assert found[essence].best_before == date(2027, 6, 30)
    assert found[sugar].best_before is None
