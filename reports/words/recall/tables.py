"""The tables of a recall for a spreadsheet, besides its key data.

Guarantees: one row of heads, ISO days, amounts and units in columns of their own. Refuses: prices
and recipes.
"""

from collections.abc import Iterator, Mapping

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Contact, Entry
from ledger.domain.lots.balance import Balance
from ledger.service.recall.answers import left_there
from ledger.service.recall.calls import ToCall
from ledger.service.recall.standing import Recall
from reports.kit.format import clock
from reports.kit.tables import Sheet
from reports.words.lots.trace import opened_on
from reports.words.lots.trace_table import UNITS, amount_in


def recall_sheets(recall: Recall) -> dict[str, Sheet]:
    """Return the tables of a recall by their names."""
    return {
        "lots": _lots(recall),
        "balance": _balance(recall),
        "calls": _calls(recall),
        "contacts": _contacts(recall),
    }


def _lots(recall: Recall) -> Sheet:
    heads = ("lot", "what", "opened", "status", "best_before", "last_look", "on_hand", "unit")
    rows = tuple(
        (
            recalled.brief.code,
            recalled.brief.name,
            opened_on(recalled.brief),
            str(recalled.brief.status),
            str(recalled.brief.best_before or ""),
            recalled.brief.grade or "",
            amount_in(recalled.brief.on_hand, recalled.brief.measure),
            UNITS[recalled.brief.measure],
        )
        for recalled in recall.lots
    )
    return Sheet(heads, rows)


def _balance(recall: Recall) -> Sheet:
    rows = []
    for recalled in recall.lots:
        measure = recalled.brief.measure
        cells = (amount_in(amount, measure) for amount in recalled.balance.parts().values())
        percent = str(recalled.balance.accounted_percent)
        rows.append((recalled.brief.code, recalled.brief.name, *cells, UNITS[measure], percent))
    return Sheet(("lot", "what", *Balance().parts(), "unit", "accounted_percent"), tuple(rows))


def _calls(recall: Recall) -> Sheet:
    heads = (
        *("order", "party", "phone", "email", "address", "ask_for", "lot", "what", "as"),
        *("amount", "unit", "on", "document", "may_have_bottles", "may_have_ml", "spoken_to"),
    )
    names = {recalled.brief.code: recalled.brief.name for recalled in recall.lots}
    rows = (
        row
        for place, call in enumerate(recall.to_call, start=1)
        for row in _deliveries(place, call, names)
    )
    return Sheet(heads, tuple(rows))


def _deliveries(place: int, call: ToCall, names: Mapping[str, str]) -> Iterator[tuple[str, ...]]:
    known = call.known
    reach = (known.phone, known.email, known.address, known.words) if known else ("",) * 4
    for delivery in call.deliveries:
        yield (
            str(place),
            call.name or "",
            *(part or "" for part in reach),
            delivery.lot,
            names.get(delivery.lot, ""),
            str(delivery.moved_as),
            amount_in(abs(delivery.amount), delivery.measure),
            UNITS[delivery.measure],
            delivery.on,
            delivery.document or "",
            amount_in(call.pieces, Measure.UEACH),
            amount_in(call.volume_ul, Measure.UL),
            "yes" if call.is_reached else "no",
        )


def _contacts(recall: Recall) -> Sheet:
    heads = ("entry", "when", "by", "lot", "party", "reached", "still_there", "words")
    rows = []
    for entry in recall.contacts:
        facts = entry.facts
        rows.append(
            (
                str(entry.seq),
                clock(entry.draft.happened),
                entry.draft.by or "",
                entry.draft.lot or "",
                facts.party,
                str(facts.reached),
                _still_there(entry),
                facts.words or "",
            )
        )
    return Sheet(heads, tuple(rows))


def _still_there(entry: Entry[Contact]) -> str:
    if entry.facts.still_there:
        return entry.facts.still_there.written
    return "0" if left_there(entry) else ""
