"""A formula's amounts for a volume, for machines."""

from msgspec.structs import replace

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Formula
from ledger.domain.entries.masters import FormulaLine, FormulaStep
from reports.json.kit.answer import Amount
from reports.json.masters.formula import formula_answer, scaled_answer
from tests.domain.builders import make


def test_amounts_are_scaled_exactly_with_the_limits_of_their_tolerance() -> None:
    oil = FormulaLine(parse_quantity("30mL"), material="oil", tolerance_mpct=2000)
    base = FormulaLine(parse_quantity("100mL"), formula="base")
    formula = replace(make(Formula), basis=parse_quantity("450mL"), lines=(oil, base))
    told = scaled_answer(formula, parse_quantity("900mL"))
    assert (told.formula, told.version, told.target) == ("orange", 1, Amount("900", "mL"))
    first, second = told.lines
    assert (first.material, first.amount) == ("oil", Amount("60", "mL"))
    assert (first.least, first.most) == (Amount("58.8", "mL"), Amount("61.2", "mL"))
    assert (second.formula, second.amount, second.least) == ("base", Amount("200", "mL"), None)


def test_all_of_a_formula_is_told_in_the_units_people_write() -> None:
    formula = replace(
        make(Formula),
        yield_min_mpct=85_500,
        steps=(FormulaStep("rest", temp_max_mdegc=-4_500, pore_max_nm=20_000),),
    )
    told = formula_answer(formula, withdrawn=True)
    assert (told.formula, told.withdrawn, told.yield_min_percent) == ("orange", True, "85.5")
    assert (told.steps[0].temp_max_c, told.steps[0].pore_max_um) == ("-4.5", "20")
