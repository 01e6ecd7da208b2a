"""Lists of lots and acts as tables for a spreadsheet.

Guarantees: a column holds one unit, which its head names; days and times are ISO 8601; a row of a
list is a row of the table. Refuses: to leave out what the list on the screen tells.
"""

from collections.abc import Iterable, Mapping, Sequence

from ledger.domain.amounts.money import coins, digits_of
from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Clean, Entry, Receipt, When
from ledger.domain.entries.choices import Precision
from ledger.domain.lots.lot import Lot
from ledger.service.lots.complaints import Complained
from ledger.service.lots.due import DueList
from ledger.service.lots.journal import Said
from ledger.service.lots.sales import Sale
from ledger.service.lots.stock import Low
from reports.kit.amounts import amount_in
from reports.kit.tables import Sheet
from reports.words.entries.sentence import sentence, title
from reports.words.lots.complaints import became
from reports.words.lots.due import todo

MEASURES = ((Measure.UL, "ml"), (Measure.MG, "g"), (Measure.UEACH, "each"))
"""The measures with the endings of their columns."""


def by_unit(what: str) -> tuple[str, ...]:
    """Return the heads of an amount, a unit each.

    >>> by_unit("on_hand")
    ('on_hand_ml', 'on_hand_g', 'on_hand_each')
    """
    return tuple(f"{what}_{unit}" for _, unit in MEASURES)


def in_unit(amount: int, measure: Measure) -> tuple[str, ...]:
    """Return the cells of an amount, that of its unit filled.

    >>> in_unit(30_500, Measure.UL)
    ('30.5', '', '')
    """
    told = amount_in(amount, measure)
    return tuple(told if each is measure else "" for each, _ in MEASURES)


def iso(when: When) -> str:
    """Return when something happened: a day alone, or a time with its offset."""
    local = when.local()
    return f"{local:%Y-%m-%d}" if when.precision is Precision.DAY else local.isoformat()


def stock_sheet(lots: Iterable[Lot], values: Mapping[int, int] | None, currency: str) -> Sheet:
    """Return what is on hand; with what is left of its cost where that is asked for."""
    digits = digits_of(currency)
    money = () if values is None else (f"value_{currency.lower()}",)
    heads = ("lot", "what", "material", "product", *by_unit("on_hand"), "is_reckoned", *money)
    rows = tuple(
        (
            lot.code,
            lot.name,
            lot.material or "",
            lot.product or "",
            *in_unit(lot.on_hand, lot.measure),
            "yes" if lot.is_reckoned else "no",
            *(() if values is None else (_coins(values.get(lot.seq), digits),)),
            str(lot.status),
            str(lot.best_before or ""),
            lot.grade or "",
            lot.supplier or "",
            lot.supplier_lot or "",
        )
        for lot in lots
    )
    return Sheet((*heads, "status", "best_before", "look", "supplier", "supplier_lot"), rows)


def _coins(minor: int | None, digits: int | None) -> str:
    return "" if minor is None else coins(minor, digits)


def low_sheet(found: Iterable[Low]) -> Sheet:
    """Return the materials of which little is there."""
    rows = tuple(
        (low.material.code, low.material.name, *in_unit(low.on_hand, low.measure)) for low in found
    )
    return Sheet(("material", "name", *by_unit("on_hand")), rows)


def journal_sheet(said: Iterable[Said]) -> Sheet:
    """Return entries as they were written."""
    heads = ("entry", "happened", "precision", "recorded", "by", "lot", "kind", "what", "reason")
    rows = tuple(
        (
            str(item.entry.seq),
            iso(item.entry.draft.happened),
            str(item.entry.draft.happened.precision),
            item.entry.recorded_at.isoformat(),
            item.entry.draft.by or "",
            item.entry.draft.lot or "",
            title(item.entry),
            sentence(item.entry),
            item.entry.draft.reason or "",
            str(item.entry.draft.origin),
            item.entry.draft.sheet or "",
            str(item.entry.draft.corrects or ""),
            str(item.corrected_by or ""),
        )
        for item in said
    )
    return Sheet((*heads, "origin", "sheet", "corrects", "corrected_by"), rows)


def due_sheet(found: DueList) -> Sheet:
    """Return what is due."""
    rows = tuple(
        (
            item.at.astimezone(found.now.tzinfo).isoformat() if item.at else "",
            str(item.waits),
            item.lot,
            item.name,
            todo(item, found.now),
        )
        for item in found.items
    )
    return Sheet(("when", "waits_for", "lot", "what", "to_do"), rows)


def complaints_sheet(found: Iterable[Complained]) -> Sheet:
    """Return complaints with what became of each."""
    heads = ("complaint", "day", "lot", "what", "from", "symptom", "opened", "stored", "mixed")
    rows = []
    for item in found:
        facts = item.entry.facts
        told = (facts.party, facts.symptom, facts.opened, facts.stored, facts.mixed, facts.words)
        number, on = str(item.number), f"{item.entry.draft.happened.local():%Y-%m-%d}"
        head = (number, on, item.lot.code, item.lot.name)
        is_open = "yes" if item.is_open else "no"
        rows.append((*head, *(part or "" for part in told), is_open, became(item)))
    return Sheet((*heads, "words", "is_open", "became"), tuple(rows))


def sales_sheet(found: Iterable[Sale]) -> Sheet:
    """Return what went to customers and came back."""
    heads = ("day", "customer", "how", "lot", "what", "bottle_ml", *by_unit("out"))
    rows = tuple(
        (
            sale.on.isoformat(),
            sale.party or "",
            str(sale.moved_as),
            sale.lot.code,
            sale.lot.name,
            "" if sale.bottle_ul is None else amount_in(sale.bottle_ul, Measure.UL),
            *in_unit(0 if sale.is_back else sale.amount, sale.lot.measure),
            *in_unit(sale.amount if sale.is_back else 0, sale.lot.measure),
            sale.document or "",
            str(sale.entry),
        )
        for sale in found
    )
    return Sheet((*heads, *by_unit("back"), "document", "entry"), rows)


def receipts_sheet(found: Iterable[Entry[Receipt]], currency: str) -> Sheet:
    """Return deliveries."""
    money = currency.lower()
    heads = ("day", "lot", "material", *by_unit("amount"), "supplier", "supplier_lot")
    rows = []
    for entry in found:
        facts, draft = entry.facts, entry.draft
        rows.append(
            (
                f"{draft.happened.local():%Y-%m-%d}",
                draft.lot or "",
                facts.material,
                *in_unit(facts.amount.amount, facts.amount.measure),
                facts.supplier or "",
                facts.supplier_lot or "",
                _coins(facts.cost_minor, facts.cost_digits),
                _coins(facts.duty_minor, facts.cost_digits),
                str(facts.best_before or ""),
                facts.certificate or "",
                facts.document or "",
                draft.by or "",
                str(entry.seq),
            )
        )
    more = (f"cost_{money}", f"duty_{money}", "best_before", "certificate", "document", "by")
    return Sheet((*heads, *more, "entry"), tuple(rows))


def cleanings_sheet(found: Sequence[Entry[Clean]]) -> Sheet:
    """Return which vessels were cleaned."""
    rows = tuple(
        (
            iso(entry.draft.happened),
            entry.facts.vessel,
            entry.facts.how,
            entry.facts.last_held or "",
            entry.draft.by or "",
            str(entry.seq),
        )
        for entry in found
    )
    return Sheet(("when", "vessel", "how", "last_held", "by", "entry"), rows)
