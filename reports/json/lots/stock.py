"""What is on hand, for machines, and what is low."""

from collections.abc import Mapping, Sequence

from msgspec.structs import asdict

from ledger.domain.amounts.money import coins, digits_of
from ledger.domain.lots.lot import Lot
from ledger.service.lots.stock import Low
from reports.json.kit.answer import Amount, Answer, Figure, amount_of
from reports.json.kit.lot import LotBrief, lot_brief
from reports.words.lots.next_in_lists import receiving


class StockRow(LotBrief, frozen=True):
    """A lot on hand."""

    value: Figure | None
    """What is left of its cost, in the house's currency; null where that was not asked for or no
    cost is in the book."""
    currency: str | None
    """ISO 4217 code of that money; null where there is no value."""


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


def stock_rows(
    found: Sequence[Lot], values: Mapping[int, int], currency: str = ""
) -> list[StockRow]:
    """Return lots on hand with what is left of their cost, by their numbers, in smallest coins."""
    return [_row(item, values.get(item.seq), currency) for item in found]


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


def _row(lot: Lot, minor: int | None, currency: str) -> StockRow:
    brief = asdict(lot_brief(lot))
    if minor is None:
        return StockRow(**brief, value=None, currency=None)
    return StockRow(**brief, value=coins(minor, digits_of(currency)), currency=currency)
