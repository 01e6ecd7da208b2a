"""Amounts of a formula for another volume, and which step an entry is."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.entries import Filter, Formula, Look, Rest, Withdrawal
from ledger.domain.entries.choices import Grade, LookedAt, RestFor
from ledger.domain.entries.masters import FormulaLine, FormulaStep
from ledger.domain.masters.formulas import (
    Called,
    before_packing,
    look_steps,
    steps_for,
    together,
    version_of,
    wanted,
    worst_wanted,
)
from tests.domain.builders import grams, make, ml

LINES = (
    FormulaLine(ml(30), material="oil", tolerance_mpct=2000),
    FormulaLine(grams(20), material="carb", overage_mpct=5000, tolerance_mpct=10_000),
    FormulaLine(ml(420), material="spirit"),
)
FORMULA = make(Formula, lines=LINES)


def test_a_version_has_one_name_on_every_paper() -> None:
    assert version_of(make(Formula, version=2)) == "orange version 2"
    assert version_of(Withdrawal("orange", 2)) == "orange version 2"


def test_amounts_scale_with_the_volume_and_carry_the_overage() -> None:
    """450 mL to 900 mL doubles all; 20 g and 5 % more are 21 g; 10 % of 42 g either way."""
    oil, carb, spirit = wanted(FORMULA, 900_000)
    assert (oil.amount, oil.least, oil.most) == (60_000, 58_800, 61_200)
    assert (carb.amount, carb.least, carb.most) == (42_000, 37_800, 46_200)
    assert (spirit.amount, spirit.least, spirit.most) == (840_000, None, None)


@given(st.integers(1, 10**9))
def test_an_amount_is_within_half_a_smallest_unit_of_its_share(target: int) -> None:
    for item, line in zip(wanted(FORMULA, target), LINES, strict=True):
        share = Fraction(target, FORMULA.basis.amount) * line.amount.amount
        exact = share * (1 + Fraction(line.overage_mpct or 0, 100_000))
        assert abs(item.amount - exact) <= Fraction(1, 2)


STEPS = (
    FormulaStep("rest", rest_for=RestFor.MACERATE),
    FormulaStep("rest", rest_for=RestFor.CHILL),
    FormulaStep("filter", passes_min=2),
    FormulaStep("look", looked_at=LookedAt.NEAT),
    FormulaStep("look", looked_at=LookedAt.AS_POURED, dilution="1:7"),
)


def test_an_entry_is_matched_with_the_steps_it_may_be() -> None:
    formula = make(Formula, steps=STEPS)

    def matched(facts: object) -> list[FormulaStep]:
        return list(steps_for(formula, facts))  # type: ignore[arg-type]

    assert matched(make(Rest)) == [STEPS[0]]
    assert matched(make(Rest, purpose=RestFor.SETTLE)) == []
    assert matched(make(Filter)) == [STEPS[2]]
    assert matched(make(Look)) == [STEPS[3]]
    assert matched(make(Look, looked_at=LookedAt.AS_POURED, dilution="1:7")) == [STEPS[4]]
    assert matched(make(Look, looked_at=LookedAt.AS_POURED, dilution="1:5")) == []
    any_rest, any_look = FormulaStep("rest"), FormulaStep("look")
    formula = make(Formula, steps=(any_rest, *STEPS[:2], any_look, *STEPS[3:]))
    assert matched(make(Rest)) == [any_rest, STEPS[0]]
    assert matched(make(Rest, purpose=RestFor.SETTLE)) == [any_rest]
    assert matched(make(Look, looked_at=LookedAt.AS_POURED, dilution="1:5")) == [any_look]
    assert matched(make(Look, dilution="1:5")) == [any_look, STEPS[3]]


def test_a_material_on_several_lines_is_wanted_in_all() -> None:
    lines = (*LINES, FormulaLine(ml(15), material="oil", tolerance_mpct=4000))
    oil, carb, spirit = together(wanted(make(Formula, lines=lines), 450_000))
    assert (oil.called.code, oil.amount, oil.least, oil.most) == ("oil", 45_000, 43_800, 46_200)
    assert (carb, spirit) == wanted(FORMULA, 450_000)[1:]


def test_a_line_without_a_tolerance_leaves_its_material_without_limits() -> None:
    for lines in (
        (LINES[0], FormulaLine(ml(15), material="oil")),
        (FormulaLine(ml(15), material="oil"), LINES[0]),
    ):
        (oil,) = together(wanted(make(Formula, lines=lines), 450_000))
        assert (oil.amount, oil.least, oil.most) == (45_000, None, None)


def test_lines_in_two_measures_stay_apart() -> None:
    lines = wanted(make(Formula, lines=(LINES[0], FormulaLine(grams(15), material="oil"))), 450_000)
    assert together(lines) == lines


def test_a_look_between_two_filters_is_not_the_last_and_one_of_goods_is_none() -> None:
    first, second, packed = (FormulaStep("look", dilution=words) for words in ("1:1", "1:2", "1:3"))
    cut = FormulaStep("filter")
    steps = (cut, first, cut, second, FormulaStep("bottle"), packed)
    assert look_steps(make(Formula, steps=steps)) == [(first, False), (second, True)]
    assert look_steps(make(Formula, steps=(first, second))) == [(first, True), (second, True)]


def test_steps_are_numbered_from_one_up_to_the_filling() -> None:
    cut, look = FormulaStep("filter"), FormulaStep("look")
    for after in ("bottle", "labels"):
        steps = (cut, look, FormulaStep(after), look)
        assert list(before_packing(make(Formula, steps=steps))) == [(1, cut), (2, look)]


def test_a_glass_may_be_as_cloudy_as_its_cloudiest_step_says_and_all_else_as_the_formula() -> None:
    poured = LookedAt.AS_POURED
    steps = (
        FormulaStep("look", looked_at=poured, worst=Grade.HAZY),
        FormulaStep("look", looked_at=poured, worst=Grade.OPALESCENT),
        FormulaStep("look", looked_at=poured, worst=Grade.CLEAR),
        FormulaStep("look", looked_at=poured),
        FormulaStep("look", looked_at=LookedAt.NEAT, worst=Grade.MILKY),
        FormulaStep("note", looked_at=poured, worst=Grade.MILKY),
    )
    formula = make(Formula, steps=steps, wanted_clarity=Grade.BRIGHT)
    assert worst_wanted(formula, poured) is Grade.OPALESCENT
    assert worst_wanted(formula, LookedAt.NEAT) is Grade.BRIGHT
    assert worst_wanted(make(Formula, steps=steps[3:], wanted_clarity=None), poured) is None


def test_what_is_called_for_has_the_code_of_its_material_or_of_its_formula() -> None:
    told = [Called("oil", None), Called(None, "orange"), Called(None, None)]
    assert [one.code for one in told] == ["oil", "orange", ""]
