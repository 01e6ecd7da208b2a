"""What to draw for a batch, for machines."""

from typing import TYPE_CHECKING, Any

from ledger.domain.masters.weighing import asked

if TYPE_CHECKING:
    from ledger.service.bench.draws import Proposed


def plain(proposed: tuple["Proposed", ...]) -> list[dict[str, Any]]:
    """Return what is proposed for machines."""
    return [
        {
            "material": item.wanted.called.material,
            "formula": item.wanted.called.formula,
            "amount": str(item.wanted.amount),
            "asked": str(asked(item.wanted)),
            "unit": str(item.wanted.measure),
            "short": str(item.short),
            "lots": [{"lot": drawn.lot, "amount": str(drawn.amount)} for drawn in item.drawn],
        }
        for item in proposed
    ]
