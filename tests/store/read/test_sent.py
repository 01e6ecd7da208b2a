"""What was sent of lots and what came back."""

from ledger.domain.entries.choices import MoveAs
from ledger.store.read.sent import moves_from
from tests.store.read.numbers import Walked, number


def test_each_movement_is_told_by_lot_and_by_when(walked: Walked) -> None:
    keeper, lots = walked
    words = {"lot": lots.packed, "party": "Bridge Street Stall"}
    keeper.do("send", amount="2", moved_as="returned", **words)
    mistake = keeper.do("send", amount="1", **words)
    keeper.do("strike", entry=str(mistake.seq), because="not sent")
    with keeper.reading() as connection:
        oil, packed = number(connection, lots.oil), number(connection, lots.packed)
        told = list(moves_from(connection, [oil, packed]))
    assert [(item.lot, item.moved_as, item.amount, item.party) for item in told] == [
        (packed, MoveAs.SALE, 6_000_000, "Bridge Street Stall"),
        (packed, MoveAs.RETURNED, 2_000_000, "Bridge Street Stall"),
    ]
