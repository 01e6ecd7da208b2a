"""One lot, for machines: all that the book knows of it."""

from typing import Any

from ledger.service.lots.dossier import Dossier
from reports.json.lots.brief import brief_plain
from reports.json.lots.journal import said_plain
from reports.json.lots.trace import trace_plain


def dossier_plain(dossier: Dossier) -> dict[str, Any]:
    """Return one lot with its inputs, outputs, holders and entries."""
    near = trace_plain(dossier.trace)
    return {
        **brief_plain(dossier.lot),
        "edges": near["edges"],
        "holders": near["holders"],
        "entries": [said_plain(said) for said in dossier.said],
        "seal": list(dossier.seal.lines),
    }
