"""A lot in brief, for machines."""

from typing import Any

from ledger.domain.lots.lot import Lot


def brief_plain(brief: Lot) -> dict[str, Any]:
    """Return a lot in brief."""
    return {
        "code": brief.code,
        "kind": str(brief.lot_type),
        **({"material": brief.material} if brief.material else {}),
        **({"product": brief.product} if brief.product else {}),
        "name": brief.name,
        "status": str(brief.status),
        "on_hand": str(brief.on_hand),
        "unit": str(brief.measure),
        "best_before": str(brief.best_before) if brief.best_before else None,
        "look": brief.grade,
    }
