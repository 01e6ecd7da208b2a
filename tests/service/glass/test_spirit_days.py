"""The day on which an entry counts is that of the clock it was written by."""

from ledger.service.glass.spirit import spirit_account
from tests.keeper import Keeper

MARCH, APRIL = ("2026-03-01", "2026-03-31"), ("2026-04-01", "2026-04-30")


def received(keeper: Keeper, first: str, last: str) -> float:
    return round(spirit_account(keeper.book, first, last).account.received, 3)


def test_a_new_time_zone_moves_no_entry_into_another_period(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    keeper.clock.forward(days=60)
    keeper.do("receive", material="spirit", amount="1L", at="2026-03-31 23:30")
    keeper.do("receive", material="spirit", amount="2L", at="2026-04-01 00:30")
    before = [received(keeper, *month) for month in (MARCH, APRIL)]
    keeper.do("house", time_zone="Pacific/Auckland")
    after = [received(keeper, *month) for month in (MARCH, APRIL)]
    assert before == after == [0.96, 1.92]
