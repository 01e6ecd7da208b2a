"""What a line is read beside: the pass before, the formula's pore, the unit of a bare number."""

from types import SimpleNamespace
from typing import Any

import pytest
from msgspec.structs import replace

from cli.front import COMMANDS
from cli.screens.bench import beside as module
from cli.screens.bench.beside import UNITS, beside, by_instrument, unit_word, usual_pass
from cli.screens.bench.parts import Act, Bench, Usual
from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import Filter, Formula
from ledger.domain.entries.choices import Medium, ProductKind, VacuumReference
from ledger.domain.entries.masters import FormulaLine, FormulaStep
from tests.kept.said import check_constants


def in_hand(**found: Any) -> Any:
    """A lot in hand of which this is known."""
    known: dict[str, Any] = dict.fromkeys(("formula", "last_pass", "liquid", "rest"))
    return SimpleNamespace(state=SimpleNamespace(code="OE-001-5"), **known | found)


def test_a_bare_number_is_counted_in_what_its_measure_is_counted_in() -> None:
    assert {measure: unit_word(unit) for measure, unit in UNITS.items()} == {
        Measure.UL: "mL",
        Measure.MG: "g",
        Measure.UEACH: "each",
    }
    assert UNITS[Measure.UEACH] == " each"
    assert unit_word(None) == "mL"


def test_what_was_weighed_says_by_what_and_what_was_read_off_that_it_was() -> None:
    added = Act(("add", "X", "oil", "7.52g"), notes=("One lot.",))
    assert by_instrument(added, "/dev/scale") == Act(
        (*added.words, "--instrument", "scale at /dev/scale", "--origin", "instrument"),
        notes=("One lot.",),
    )
    finished = Act(("finish", "X", "238g"))
    assert by_instrument(finished, "COM3").words == (
        *finished.words,
        "--origin",
        "instrument",
    )


SOME = Quantity(240_000, Measure.UL, "240mL")
FORMULA = Formula(
    code="orange",
    version=1,
    product="Orange essence",
    product_kind=ProductKind.ESSENCE,
    basis=SOME,
    lines=(
        FormulaLine(SOME, "oil"),
        FormulaLine(SOME, "spirit"),
        FormulaLine(SOME, formula="other"),
    ),
    steps=(
        FormulaStep("rest"),
        FormulaStep("look", pore_max_nm=1_000),
        FormulaStep("filter"),
        FormulaStep("filter", pore_max_nm=25_000),
        FormulaStep("filter", pore_max_nm=450),
    ),
)
PASS = Filter(1, Medium.PAPER, SOME, SOME)


def test_with_no_lot_in_hand_only_words_are_known() -> None:
    def unit_of(_: str) -> str | None:
        return "g"

    assert beside(None, {"oil": "oil"}, unit_of, "SOO-001-3") == Bench(
        materials={"oil": "oil"},
        commands=frozenset(COMMANDS),
        unit_of=unit_of,
        source="SOO-001-3",
    )


@pytest.mark.parametrize("is_resting", [True, False])
def test_of_a_lot_in_hand_all_that_a_line_leaves_out_is_known(is_resting: bool) -> None:
    def unit_of(_: str) -> str | None:
        return None

    rest = object() if is_resting else None
    found = in_hand(formula=FORMULA, liquid="NS-001-J", rest=rest)
    assert beside(found, {"oil": "oil"}, unit_of, None) == Bench(
        lot="OE-001-5",
        materials={"oil": "oil"},
        called=frozenset({"oil", "spirit"}),
        commands=frozenset(COMMANDS),
        unit_of=unit_of,
        usual=Usual("as the formula has it", pore="25"),
        liquid="NS-001-J",
        is_resting=is_resting,
        source=None,
    )
    assert beside(in_hand(), {}, unit_of, None).called == frozenset()


def test_without_a_pass_and_a_pore_of_the_formula_nothing_is_usual() -> None:
    assert usual_pass(in_hand()) == Usual("as the formula has it")


@pytest.mark.parametrize(
    ("facts", "usual"),
    [
        (PASS, Usual("as the pass before", "paper")),
        (replace(PASS, medium=Medium.UNSAID), Usual("as the pass before")),
        (replace(PASS, medium="felt"), Usual("as the pass before")),
        (
            replace(
                PASS,
                pore_low_nm=20_000,
                pore_high_nm=25_000,
                vacuum_pa=40_000,
                vacuum_reference=VacuumReference.ABSOLUTE,
            ),
            Usual("as the pass before", "paper", "20-25", "40", is_absolute=True),
        ),
        (
            replace(
                PASS,
                pore_low_nm=450,
                pore_high_nm=450,
                vacuum_pa=0,
                vacuum_reference=VacuumReference.BELOW_ATMOSPHERE,
            ),
            Usual("as the pass before", "paper", "0.45", "0"),
        ),
    ],
    ids=["a medium", "unsaid", "of before", "all said", "one pore, no vacuum"],
)
def test_a_pass_is_taken_for_what_the_one_before_was(facts: Filter, usual: Usual) -> None:
    assert usual_pass(in_hand(last_pass=facts, formula=FORMULA)) == usual


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
