"""The next step of a batch that is made by a formula, as its maker types it."""

import pytest

from ledger.domain.entries import Formula, Rest
from ledger.domain.entries.choices import LookedAt, RestFor
from ledger.domain.entries.masters import FormulaStep
from reports.words.desk import next_in_formula as module
from reports.words.desk.next_in_formula import by_formula, end_of_rest
from tests.domain.builders import entry, grams, lot, make
from tests.kept.said import check_said

COLD = 6000
"""The warmest it may be, in thousandths of a degree Celsius."""


@pytest.mark.parametrize(
    ("step", "command"),
    [
        (FormulaStep("rest"), "rest E-1 --for PURPOSE"),
        (FormulaStep("rest", rest_for=RestFor.CHILL, temp_max_mdegc=COLD), "rest E-1 --for chill"),
        (
            FormulaStep("filter", precoat_min=grams(4), temp_max_mdegc=COLD),
            "filter E-1 --medium paper --pore SIZE --out VOLUME --precoat AMOUNT --temp DEGREES",
        ),
        (FormulaStep("filter"), "filter E-1 --medium paper --pore SIZE --out VOLUME"),
        (FormulaStep("rinse"), "rinse E-1 --with LOT --in VOLUME --out VOLUME --to WHERE"),
        (FormulaStep("decant"), "decant E-1 VOLUME"),
        (FormulaStep("measure"), "measure E-1 WHAT READING"),
        (
            FormulaStep("measure", words="pH", temp_max_mdegc=COLD),
            "measure E-1 ph READING --temp DEGREES",
        ),
        (FormulaStep("makeup", temp_max_mdegc=COLD), "makeup E-1 VOLUME --with LOT --temp DEGREES"),
        (
            FormulaStep("look", looked_at=LookedAt.AS_POURED, dilution="1:7", temp_max_mdegc=COLD),
            "look E-1 GRADE --of as-poured --dilution 1:7 --temp DEGREES",
        ),
        (FormulaStep("finish", temp_max_mdegc=COLD), "finish E-1 VOLUME --temp DEGREES"),
    ],
)
def test_a_step_is_a_command_that_asks_for_what_the_formula_limits(
    step: FormulaStep, command: str
) -> None:
    assert by_formula(make(Formula, steps=(step,)), lot("E-1")) == f"pottle {command}"


def test_a_batch_that_has_all_its_steps_has_no_next_one_of_its_formula() -> None:
    steps = (FormulaStep("add"), FormulaStep("bottle"))
    assert by_formula(make(Formula, steps=steps), lot("E-1")) is None


@pytest.mark.parametrize(
    ("step", "command"),
    [
        (FormulaStep("rest", rest_for=RestFor.MACERATE), "pottle rest E-1 --end"),
        (FormulaStep("rest", rest_for=RestFor.CHILL), "pottle rest E-1 --end"),
        (FormulaStep("rest", temp_max_mdegc=COLD), "pottle rest E-1 --end --temp DEGREES"),
    ],
)
def test_the_end_of_a_rest_asks_for_the_temperature_that_its_step_limits(
    step: FormulaStep, command: str
) -> None:
    formula = make(Formula, steps=(step,))
    assert end_of_rest(entry(make(Rest)), formula, "E-1") == command


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)
