"""A formula's amounts for a volume, for machines."""

from msgspec.structs import replace

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Formula
from ledger.domain.entries.masters import FormulaLine
from reports.json.masters.formula import scaled_plain
from tests.domain.builders import make


def test_amounts_are_scaled_exactly_with_the_limits_of_their_tolerance() -> None:
    oil = FormulaLine(parse_quantity("30mL"), material="oil", tolerance_mpct=2000)
    base = FormulaLine(parse_quantity("100mL"), formula="base")
    formula = replace(make(Formula), basis=parse_quantity("450mL"), lines=(oil, base))
    told = scaled_plain(formula, parse_quantity("900mL"))
    assert (told["formula"], told["version"], told["target"]) == ("orange", 1, "900000")
    first, second = told["lines"]
    assert (first["material"], first["amount"]) == ("oil", "60000")
    assert (first["least"], first["most"]) == ("58800", "61200")
    assert (second["formula"], second["amount"], second["least"]) == ("base", "200000", None)
