"""What came into lots and what went out of them."""

from ledger.domain.entries.choices import Place
from ledger.store.read.turnover import Turnover, turnovers
from tests.store.read.numbers import Walked, number


def test_what_came_went_and_was_used_is_summed_by_lot(walked: Walked) -> None:
    keeper, lots = walked
    keeper.do("send", lot=lots.packed, amount="2", moved_as="returned", party="Quay Bar")
    with keeper.reading() as connection:
        oil, packed = number(connection, lots.oil), number(connection, lots.packed)
        told = turnovers(connection, [oil, packed])
    assert told[oil] == Turnover(came=500_000, used=30_769)
    assert told[packed] == Turnover(15_000_000, 2_000_000, 0, {Place.SALE: 6_000_000})
