"""What is on hand, for machines, and what is low."""

from collections.abc import Mapping, Sequence

from msgspec.structs import asdict

from ledger.domain.lots.lot import Lot
from ledger.service.lots.stock import Low
from reports.json.kit.answer import Amount, Answer, Figure, amount_of
from reports.json.kit.lot import LotBrief, lot_brief
from reports.kit.format import coins
from reports.words.lots.next_in_lists import receiving


class StockRow(LotBrief, frozen=True):
    """A lot on hand."""

    value: Figure | None
    """What is left of its cost, in the house's currency; null where that was not asked for or no
    cost is in the book."""


class LowRow(Answer, frozen=True):
    """A material of which little is there."""

    material: str
    """Its code."""
    name: str
    """Its name for people."""
    on_hand: Amount
    """What is there in all its lots."""
    next: str
    """The command that receives more."""


def stock_rows(found: Sequence[Lot], values: Mapping[int, int]) -> list[StockRow]:
    """Return lots on hand with what is left of their cost, by their numbers, in hundredths."""
    return [_row(item, values.get(item.seq)) for item in found]


def low_rows(found: Sequence[Low]) -> list[LowRow]:
    """Return the materials of which little is there."""
    return [
        LowRow(
            material=item.material.code,
            name=item.material.name,
            on_hand=amount_of(item.on_hand, item.measure),
            next=receiving(item),
        )
        for item in found
    ]


def _row(lot: Lot, minor: int | None) -> StockRow:
    value = None if minor is None else coins(minor)
    return StockRow(**asdict(lot_brief(lot)), value=value)
