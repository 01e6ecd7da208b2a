"""The step of a formula that comes next in a batch: the first that is not in its book."""

import pytest

from ledger.domain.entries import Facts, Filter, Finish, Formula, Look, Measurement, Rest
from ledger.domain.entries.choices import LookedAt, Measured, RestFor
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.rules.formula.ahead import step_ahead
from tests.domain.builders import at, lot, make

MACERATE = FormulaStep("rest", rest_for=RestFor.MACERATE)
CHILL = FormulaStep("rest", rest_for=RestFor.CHILL)
TWICE = FormulaStep("filter", passes_min=2)
NEAT = FormulaStep("look", looked_at=LookedAt.NEAT)
POURED = FormulaStep("look", looked_at=LookedAt.AS_POURED, dilution="1:7")
LATER = FormulaStep("look", looked_at=LookedAt.NEAT, age_minutes=7 * 24 * 60)
BRIX = FormulaStep("measure", words="Brix of the base")
DECANT, FINISH, BOTTLE = (FormulaStep(verb) for verb in ("decant", "finish", "bottle"))
ESSENCE = (FormulaStep("note"), MACERATE, CHILL, TWICE, NEAT, FINISH, LATER, BOTTLE, DECANT)
SYRUP = (BRIX, NEAT, POURED, FINISH)
AGAIN = FormulaStep("look", looked_at=LookedAt.NEAT, words="Once more")
BEFORE_AND_AFTER = (NEAT, FormulaStep("filter"), AGAIN, FINISH)
RESTING, RESTED = make(Rest), make(Rest, ended_at=at(10))
CHILLED = make(Rest, purpose=RestFor.CHILL, ended_at=at(10))
PASS, LOOK = make(Filter), make(Look)
AS_POURED = make(Look, looked_at=LookedAt.AS_POURED, dilution="1:7")
READ = make(Measurement, what=Measured.BRIX)


@pytest.mark.parametrize(
    ("steps", "done", "ahead"),
    [
        (ESSENCE, (), MACERATE),
        (ESSENCE, (RESTING,), MACERATE),
        (ESSENCE, (RESTED,), CHILL),
        (ESSENCE, (RESTED, CHILLED), TWICE),
        (ESSENCE, (RESTED, CHILLED, PASS), TWICE),
        (ESSENCE, (RESTED, CHILLED, PASS, PASS), NEAT),
        (ESSENCE, (RESTED, PASS, PASS, LOOK), CHILL),
        (ESSENCE, (RESTED, CHILLED, PASS, PASS, LOOK), FINISH),
        (ESSENCE, (RESTED, CHILLED, PASS, PASS, LOOK, make(Finish)), None),
        (ESSENCE, (RESTED, CHILLED, PASS, LOOK, PASS), NEAT),
        (SYRUP, (), BRIX),
        (SYRUP, (READ,), NEAT),
        (SYRUP, (READ, LOOK), POURED),
        (SYRUP, (READ, AS_POURED), NEAT),
        (SYRUP, (READ, LOOK, AS_POURED), FINISH),
        (BEFORE_AND_AFTER, (LOOK,), BEFORE_AND_AFTER[1]),
        (BEFORE_AND_AFTER, (LOOK, PASS), AGAIN),
        (BEFORE_AND_AFTER, (PASS, LOOK), AGAIN),
        (BEFORE_AND_AFTER, (LOOK, PASS, LOOK), FINISH),
        ((DECANT,), (), DECANT),
        ((BOTTLE, DECANT), (), None),
        ((), (), None),
    ],
)
def test_the_first_step_up_to_the_filling_that_is_not_in_the_book_comes_next(
    steps: tuple[FormulaStep, ...], done: tuple[Facts, ...], ahead: FormulaStep | None
) -> None:
    assert step_ahead(make(Formula, steps=steps), lot("E-1", *done)) == ahead
