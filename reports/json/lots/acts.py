"""Sales, deliveries and cleanings, for machines."""

from datetime import date

from ledger.domain.amounts.money import coins
from ledger.domain.entries import Clean, Entry, Receipt
from ledger.domain.entries.choices import MoveAs
from ledger.service.lots.sales import Sale
from reports.json.kit.answer import Amount, Answer, Code, Figure, Moment, amount_of, moment


class SaleRow(Answer, frozen=True):
    """Goods that went to a customer, or came back."""

    entry: int
    """Number of the entry."""
    on: date
    """The day."""
    party: str | None
    """Who."""
    code: Code
    """Code of the lot."""
    name: str
    """What it is."""
    moved_as: MoveAs
    """How it went."""
    amount: Amount
    """How much."""
    document: str | None
    """Number of the delivery note."""


class ReceiptRow(Answer, frozen=True):
    """A delivery."""

    entry: int
    """Number of the entry."""
    on: date
    """The day."""
    code: Code | None
    """Code of the lot."""
    material: str
    """Code of the material."""
    amount: Amount
    """How much."""
    supplier: str | None
    """Who sent it."""
    supplier_lot: str | None
    """The supplier's own lot."""
    cost: Figure | None
    """What it cost in all."""
    currency: str
    """ISO 4217 code of the money."""
    document: str | None
    """Number of the delivery note."""


class CleaningRow(Answer, frozen=True):
    """A vessel that was cleaned."""

    entry: int
    """Number of the entry."""
    happened: Moment
    """When."""
    vessel: str
    """Which vessel."""
    how: str
    """How it was cleaned."""
    held: str | None
    """What it held before."""
    by: str | None
    """Initials of who did it."""


def sale_row(sale: Sale) -> SaleRow:
    """Return what went to a customer, or came back."""
    return SaleRow(
        entry=sale.entry,
        on=sale.on,
        party=sale.party,
        code=sale.lot.code,
        name=sale.lot.name,
        moved_as=sale.moved_as,
        amount=amount_of(sale.amount, sale.lot.measure),
        document=sale.document,
    )


def receipt_row(entry: Entry[Receipt], currency: str) -> ReceiptRow:
    """Return a delivery."""
    facts = entry.facts
    cost = facts.cost_minor
    return ReceiptRow(
        entry=entry.seq,
        on=entry.draft.happened.local().date(),
        code=entry.draft.lot,
        material=facts.material,
        amount=amount_of(facts.amount.amount, facts.amount.measure),
        supplier=facts.supplier,
        supplier_lot=facts.supplier_lot,
        cost=None if cost is None else coins(cost, facts.cost_digits),
        currency=currency,
        document=facts.document,
    )


def cleaning_row(entry: Entry[Clean]) -> CleaningRow:
    """Return a cleaning."""
    facts, draft = entry.facts, entry.draft
    when = moment(draft.happened)
    return CleaningRow(entry.seq, when, facts.vessel, facts.how, facts.last_held, draft.by)
