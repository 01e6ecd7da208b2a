"""A formula's amounts for a volume, for machines."""

from datetime import date

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Quantity, parse_quantity
from ledger.domain.entries import Formula
from ledger.domain.entries.choices import Grade, LookedAt, RestFor
from ledger.domain.entries.masters import FormulaLine, FormulaStep, Keeping
from reports.json.kit.answer import Amount
from reports.json.masters.formula import difference_rows, formula_answer, formula_row, scaled_answer
from tests.domain.builders import make
from tests.kept.filled import bare, filled
from tests.reports.json.kept import check


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


WHOLE = replace(
    make(Formula),
    basis=parse_quantity("450mL"),
    wanted_clarity=Grade.BRIGHT,
    pour_parts=7,
    best_before_days=540,
    yield_min_mpct=85_500,
    yield_max_mpct=104_250,
    abv_min_mpct=80_125,
    abv_max_mpct=90_375,
    claim="strong",
    label_text="Shake it.",
    caution="Not neat.",
    packaging="bottle and cap",
    prepared_by="AB",
    checked_by="CD",
    valid_from=date(2026, 3, 2),
    lines=(
        FormulaLine(
            parse_quantity("30mL"), material="oil", overage_mpct=1_500, tolerance_mpct=2_125
        ),
        FormulaLine(parse_quantity("33.337g"), formula="base"),
    ),
    steps=(
        FormulaStep(
            "rest", words="Shake it.", minutes_min=30, minutes_max=90, temp_min_mdegc=2_125,
            temp_max_mdegc=8_375, rest_for=RestFor.CHILL,
        ),
        FormulaStep(
            "filter", pore_max_nm=2_125, passes_min=2, precoat_min=parse_quantity("7.5g")
        ),
        FormulaStep(
            "look", looked_at=LookedAt.IN_SYRUP, dilution="1:7", worst=Grade.HAZY, age_minutes=1440
        ),
    ),
    keeping=(Keeping("cool", 40, 7, 65_125), Keeping("cold", 90)),
)  # fmt: skip


def test_every_field_of_a_formula_and_of_a_volume_of_it_is_the_kept_one() -> None:
    rows = (("amount of oil", "30 mL", "31 mL"), ("basis", "450 mL", "1 L"))
    check(
        "formula",
        formula_answer(WHOLE, withdrawn=True),
        formula_answer(make(Formula), withdrawn=False),
        formula_row(WHOLE, withdrawn=True),
        *difference_rows(rows),
        scaled_answer(WHOLE, parse_quantity("777mL")),
    )


def test_every_part_of_a_formula_stands_under_its_own_key() -> None:
    full, none = filled(Formula), bare(Formula)
    target = filled(Quantity, amount=480_000)
    check(
        "formula_filled",
        formula_answer(full, withdrawn=False),
        formula_answer(none, withdrawn=True),
        scaled_answer(full, target),
        *difference_rows([("water", "1 L", "2 L"), ("sugar", "1 kg", "")]),
    )
