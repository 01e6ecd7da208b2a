"""Values for machines: stable keys, amounts as strings of whole numbers with their unit.

Guarantees: the keys are documented in DEVELOPERS.md and only ever added to. Refuses: floats.
"""

from typing import Any

from ledger.domain.evidence.seals import Seal
from ledger.service.evidence.verify import Audit
from ledger.service.lots.dossier import Dossier, Said
from ledger.service.lots.shares import Traced
from ledger.service.lots.trace import Holder, Trace, Way
from ledger.store.read.briefs import Brief
from reports.kit.format import clock
from reports.words.entries.sentence import TITLES, sentence
from reports.words.lots.shares import share_plain


def brief_plain(brief: Brief) -> dict[str, Any]:
    """Return a lot in brief."""
    return {
        "code": brief.code,
        "kind": brief.lot_type,
        **({"material": brief.material} if brief.material else {}),
        **({"product": brief.product} if brief.product else {}),
        "name": brief.name,
        "status": str(brief.status),
        "on_hand": str(brief.on_hand),
        "unit": str(brief.measure),
        "best_before": brief.best_before,
        "look": brief.grade,
    }


def trace_plain(trace: Trace) -> dict[str, Any]:
    """Return a trace: the lot, its nodes, edges and holders."""
    return {
        "lot": trace.lot.code,
        "nodes": [
            {**brief_plain(node.brief), "depth": node.depth, "way": str(node.way)}
            for node in trace.nodes
        ],
        "edges": [
            {
                "from": edge.source,
                "to": edge.target,
                "amount": str(edge.amount),
                "unit": str(edge.measure),
            }
            for edge in trace.edges
        ],
        "holders": [holder_plain(item) for item in trace.holders],
    }


def holder_plain(item: Holder) -> dict[str, Any]:
    """Return goods that went out or came back."""
    return {
        "lot": item.lot,
        "party": item.party,
        "as": str(item.moved_as),
        "amount": str(item.amount),
        "unit": str(item.measure),
        "on": item.on,
        "document": item.document,
    }


def traced_plain(found: Traced) -> dict[str, Any]:
    """Return a trace with how much is carried; `share` of a lot back is of it in the lot traced."""
    plain = trace_plain(found.trace)
    for node, told in zip(found.trace.nodes, plain["nodes"], strict=True):
        shares = found.behind if node.way is Way.BACK else found.ahead
        if node.brief.code in shares:
            told["share"] = share_plain(shares[node.brief.code])
    circles = [list(circle) for circle in found.circles]
    return {**plain, "circles": circles, "left_out": found.hidden}


def said_plain(said: Said) -> dict[str, Any]:
    """Return one entry of the journal."""
    entry = said.entry
    return {
        "entry": entry.seq,
        "kind": entry.kind,
        "lot": entry.draft.lot,
        "happened": clock(entry.draft.happened),
        "recorded_at": entry.recorded_at.isoformat(),
        "by": entry.draft.by,
        "title": TITLES[entry.kind],
        "says": sentence(entry),
        "reason": entry.draft.reason,
        "corrects": entry.draft.corrects,
        "corrected_by": said.corrected_by,
        "late": entry.is_late,
    }


def dossier_plain(dossier: Dossier) -> dict[str, Any]:
    """Return one lot with its inputs, outputs, holders and entries."""
    near, day = trace_plain(dossier.trace), dossier.state.best_before
    return {
        **brief_plain(dossier.brief),
        "best_before": day.isoformat() if day else None,
        "edges": near["edges"],
        "holders": near["holders"],
        "entries": [said_plain(said) for said in dossier.said],
        "seal": list(dossier.seal.lines),
    }


def audit_plain(audit: Audit, older: Seal | None = None) -> dict[str, Any]:
    """Return what a verification found, against a seal or without."""
    return {
        "ok": not audit.faults,
        "entries": audit.entries,
        "root": audit.root.hex(),
        "findings": [{"entry": fault.seq, "what": fault.what} for fault in audit.faults],
        **({"seal": list(older.lines), "read_after": audit.after} if older else {}),
    }
