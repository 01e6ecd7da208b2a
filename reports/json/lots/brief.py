"""A lot in brief, for machines."""

from typing import Any

from ledger.store.read.briefs import Brief


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
