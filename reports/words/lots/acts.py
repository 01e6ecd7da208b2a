"""Sales, deliveries and cleanings in words.

Guarantees: what came back is taken off what a customer has of a lot. Refuses: to sum what is
counted in different measures.
"""

from collections.abc import Sequence

from ledger.domain.amounts.quantity import show, tidy
from ledger.domain.entries import Clean, Entry, Receipt
from ledger.service.lots.sales import Sale
from reports.kit.format import clock, day, money

SALES = ("day", "customer", "lot", "what", "how", "amount", "document")
"""Heads of the list of sales."""
RECEIPTS = ("day", "lot", "material", "amount", "from", "their lot", "cost")
"""Heads of the list of deliveries."""
CLEANINGS = ("when", "vessel", "how", "held", "by")
"""Heads of the list of cleanings."""


def sale_cells(sale: Sale) -> list[str]:
    """Return a row of cells of what went to a customer or came back."""
    return [
        sale.on.isoformat(),
        sale.party or "not named",
        sale.lot.code,
        sale.lot.name,
        str(sale.moved_as).replace("-", " "),
        show(sale.amount, sale.lot.measure),
        sale.document or "",
    ]


def totals(found: Sequence[Sale]) -> list[str]:
    """Return what each customer has had of each product, what came back taken off, a line each."""
    sums: dict[tuple[str, str], tuple[int, Sale]] = {}
    for sale in found:
        key = (sale.party or "not named", sale.lot.name)
        before, _ = sums.get(key, (0, sale))
        sums[key] = (before + (-sale.amount if sale.is_back else sale.amount), sale)
    return [
        f"{party}: {show(amount, sale.lot.measure)} of {name}."
        for (party, name), (amount, sale) in sorted(sums.items(), key=lambda item: item[0])
    ]


def receipt_cells(entry: Entry[Receipt], currency: str) -> list[str]:
    """Return a row of cells of a delivery."""
    facts = entry.facts
    paid = facts.cost_minor
    return [
        day(entry.draft.happened),
        entry.draft.lot or "",
        facts.material,
        tidy(facts.amount.written),
        facts.supplier or "",
        facts.supplier_lot or "",
        "" if paid is None else money(paid, currency, facts.cost_digits),
    ]


def cleaning_cells(entry: Entry[Clean]) -> list[str]:
    """Return a row of cells of a cleaning."""
    facts = entry.facts
    by = entry.draft.by or ""
    return [clock(entry.draft.happened), facts.vessel, facts.how, facts.last_held or "", by]
