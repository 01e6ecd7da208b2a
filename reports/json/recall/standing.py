"""A recall for machines.

Guarantees: amounts as strings of whole numbers with their unit; keys are only ever added.
"""

from typing import Any

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Contact, Entry
from ledger.domain.lots.balance import Balance
from ledger.service.recall.answers import left_there
from ledger.service.recall.calls import ToCall
from ledger.service.recall.standing import Recall
from reports.json.lots.brief import brief_plain
from reports.json.lots.trace import holder_plain
from reports.kit.format import clock
from reports.words.recall.standing import next_line


def recall_plain(recall: Recall, *, drill: bool) -> dict[str, Any]:
    """Return a recall for machines."""
    begun, ended = recall.begun, recall.closed
    cause = ended.facts.cause if ended else None
    return {
        "lot": recall.lot.code,
        "name": recall.lot.name,
        "drill": drill,
        "begun": clock(begun.draft.happened) if begun else None,
        "reason": begun.draft.reason if begun else None,
        "closed": clock(ended.draft.happened) if ended else None,
        "cause": cause,
        "lots": [
            {
                **brief_plain(item.brief),
                "balance": balance_plain(item.balance, item.brief.measure),
            }
            for item in recall.lots
        ],
        "not_recalled": list(recall.not_held),
        "accounted_percent": str(recall.balance.accounted_percent),
        "balance": balance_plain(recall.balance, recall.measure),
        "to_call": [_call_plain(call) for call in recall.to_call],
        "next": next_line(recall, drill=drill),
    }


def balance_plain(balance: Balance, measure: Measure) -> dict[str, str]:
    """Return a balance for machines."""
    parts = {name: str(amount) for name, amount in balance.parts().items()}
    return {**parts, "unit": str(measure)}


def _call_plain(call: ToCall) -> dict[str, Any]:
    known = call.known
    return {
        "party": call.name,
        "known": known is not None,
        "phone": known.phone if known else None,
        "email": known.email if known else None,
        "address": known.address if known else None,
        "words": known.words if known else None,
        "may_have": str(call.pieces),
        "may_have_unit": str(Measure.UEACH),
        "may_have_volume": str(call.volume_ul),
        "may_have_volume_unit": str(Measure.UL),
        "last_sent": call.last_sent,
        "spoken_to": call.is_reached,
        "deliveries": [holder_plain(item) for item in call.deliveries],
        "contacts": [_contact_plain(entry) for entry in call.contacts],
    }


def _contact_plain(entry: Entry[Contact]) -> dict[str, Any]:
    facts = entry.facts
    told = left_there(entry)
    return {
        "entry": entry.seq,
        "happened": clock(entry.draft.happened),
        "by": entry.draft.by,
        "reached": str(facts.reached),
        "still_there": str(told.amount) if told else None,
        "unit": str(told.measure) if told else None,
        "words": facts.words,
    }
