"""A formula's amounts for a volume, for machines."""

from typing import Any

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries import Formula
from ledger.domain.masters.formulas import wanted
from ledger.domain.masters.weighing import asked


def scaled_plain(formula: Formula, target: Quantity) -> dict[str, Any]:
    """Return what goes in for a volume for machines; amounts are exact, `asked` is not."""
    return {
        "formula": formula.code,
        "version": formula.version,
        "target": str(target.amount),
        "unit": str(target.measure),
        "lines": [
            {
                "material": item.called.material,
                "formula": item.called.formula,
                "amount": str(item.amount),
                "asked": str(asked(item)),
                "unit": str(item.measure),
                "least": None if item.least is None else str(item.least),
                "most": None if item.most is None else str(item.most),
            }
            for item in wanted(formula, target.amount)
        ],
    }
