"""Formulas in words: shown, compared and scaled alike."""

from datetime import date

from msgspec.structs import replace

from ledger.domain.entries import Formula
from ledger.domain.entries.choices import Grade, LookedAt, RestFor
from ledger.domain.entries.masters import FormulaLine, FormulaStep, Keeping
from ledger.domain.evidence.seals import Seal
from reports.kit.frame import frame_of
from reports.words.masters import formula as module
from reports.words.masters.formula import (
    _step_words,
    checker,
    differences,
    facts_of,
    formula_paper,
    limits,
    line_rows,
    step_rows,
)
from tests.domain.builders import grams, make, ml
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said
from tests.kept.told import told as in_lines

REST = FormulaStep("rest", "Shaken.", rest_for=RestFor.MACERATE, minutes_min=1440)
CHILL = FormulaStep("rest", rest_for=RestFor.CHILL, temp_min_mdegc=0, temp_max_mdegc=6000)
FILTER = FormulaStep("filter", pore_max_nm=11_000, passes_min=1, precoat_min=grams(4))
LOOK = FormulaStep("look", dilution="1:7", worst=Grade.CLEAR, age_minutes=10_080)
FORMULA = make(
    Formula,
    basis=ml(480),
    yield_min_mpct=85_000,
    abv_min_mpct=80_000,
    abv_max_mpct=90_500,
    claim="for flavouring only",
    lines=(FormulaLine(ml(30), material="oil", tolerance_mpct=2500, overage_mpct=1000),),
    steps=(REST, CHILL, FILTER, LOOK),
    keeping=(Keeping("cool and dark", 540, opened_days=1, brix_min_mpct=60_000),),
    valid_from=date(2026, 4, 1),
)


def test_every_fact_is_told() -> None:
    assert dict(facts_of(FORMULA)) == {
        "product": "Orange essence",
        "kind": "essence",
        "basis": "480 mL",
        "keeps": "540 days cool and dark, 1 day once opened if its base syrup reads 60 °Bx or more",
        "yield": "at least 85 %",
        "strength": "80 % to 90.5 %",
        "claim": "for flavouring only",
        "prepared by": "nobody named",
        "checked by": "nobody yet",
        "valid from": "2026-04-01",
    }


def test_a_check_by_who_prepared_it_is_said_so() -> None:
    assert checker(replace(FORMULA, prepared_by="AB", checked_by="CD")) == "CD"
    same = replace(FORMULA, prepared_by="AB", checked_by="AB")
    assert checker(same) == "AB, who prepared it too"


def test_every_limit_of_a_step_is_told() -> None:
    assert [row[3] for row in step_rows(FORMULA)] == [
        "for macerate, at least 1 d",
        "for chill, 0 °C to 6 °C",
        "at most 11 µm, 1 pass or more, precoat at least 4 g",
        "1:7, clear or better, 7 d after finishing",
    ]


def test_a_step_is_told_by_its_verb_its_words_and_its_limits() -> None:
    step = FormulaStep("rest", minutes_min=60)
    said = limits(step)
    assert said
    assert [_step_words(replace(step, words=words)) for words in (None, "In the dark.")] == [
        f"rest: {said}",
        f"rest: In the dark; {said}",
    ]
    bare = FormulaStep("rest")
    assert [_step_words(replace(bare, words=words)) for words in (None, "In the dark.")] == [
        "rest",
        "rest: In the dark",
    ]


def test_amounts_are_scaled_with_overage_and_tolerance() -> None:
    """30 mL and 1 % more for 480 mL; 60.6 mL for 960 mL, and 2.5 % of it either way."""
    assert line_rows(FORMULA, 960_000) == [("oil", "60.6 mL", "1 %", "2.5 %", "59.1 mL to 62.1 mL")]


def test_of_steps_that_were_put_in_or_left_out_each_is_told_by_its_own_number() -> None:
    longer = replace(FORMULA, steps=(CHILL, *FORMULA.steps[:2], REST, LOOK, *FORMULA.steps[2:]))
    assert [row[0] for row in differences(FORMULA, longer)] == [
        row[0] for row in differences(longer, FORMULA)
    ]
    assert [(was, now) for _, was, now in differences(FORMULA, longer)] == [
        (now, was) for _, was, now in differences(longer, FORMULA)
    ]
    told = [now for _, was, now in differences(FORMULA, longer) if was == "–"]
    assert told == [_step_words(step) for step in (CHILL, REST, LOOK)]


def test_what_differs_is_told_and_nothing_else() -> None:
    new = replace(
        FORMULA,
        version=2,
        claim=None,
        lines=(FormulaLine(ml(32), material="oil"), FormulaLine(grams(20), material="carb")),
        steps=(REST, FILTER, replace(LOOK, worst=Grade.BRIGHT)),
    )
    assert differences(FORMULA, FORMULA) == []
    assert differences(FORMULA, new) == [
        ("claim", "for flavouring only", "–"),
        ("oil", "30 mL, overage 1 %, ± 2.5 %", "32 mL"),
        ("carb", "–", "20 g"),
        ("step 2", "rest: for chill, 0 °C to 6 °C", "–"),
        (
            "step 4",
            "look: 1:7, clear or better, 7 d after finishing",
            "look: 1:7, bright or better, 7 d after finishing",
        ),
    ]


def test_a_fact_that_is_told_twice_is_compared_as_one() -> None:
    cool, warm = Keeping("cool and dark", 540), Keeping("at the bar", 90)
    old = replace(FORMULA, keeping=(cool, warm))
    new = replace(FORMULA, keeping=(cool, replace(warm, days=60)))
    assert differences(old, new) == [
        (
            "keeps",
            "540 days cool and dark; 90 days at the bar",
            "540 days cool and dark; 60 days at the bar",
        )
    ]


def test_what_is_looked_at_is_told_in_words_and_ends_of_a_time_apart() -> None:
    poured = FormulaStep("look", looked_at=LookedAt.AS_POURED, temp_max_mdegc=6000)
    rest = FormulaStep("rest", minutes_min=1440, minutes_max=10_080, temp_min_mdegc=-2000)
    assert limits(poured) == "as poured, at most 6 °C"
    assert limits(rest) == "1 d to 7 d, at least −2 °C"
    assert limits(FormulaStep("filter", passes_min=2)) == "2 passes or more"
    assert limits(FormulaStep("note")) == ""


def test_the_paper_of_a_formula_is_the_kept_one_and_says_when_it_is_withdrawn() -> None:
    frame = frame_of(None, Seal("", 0, ""))
    told = [
        line
        for formula, is_withdrawn in ((FORMULA, True), (make(Formula), False))
        for line in in_lines("paper", formula_paper(formula, frame, is_withdrawn=is_withdrawn))
    ]
    check_golden("formula_paper.txt", "\n".join(told) + "\n")


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module, "formula_paper", "differences")


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
