"""The gate of a lot with a formula: each of its steps has an entry of its own in the book."""

import pytest

from ledger.domain.entries import (
    Decant,
    Facts,
    Filter,
    Formula,
    Labels,
    MakeUp,
    Measurement,
    Rest,
    Rinse,
)
from ledger.domain.entries.choices import Measured, RestFor
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.rules import Finding
from tests.domain.builders import at, lot, make, packed
from tests.domain.rules.cases import Case, find
from tests.domain.rules.release.leaving import WHOLE_GATE, released, stepped, stop

FILTER = make(Filter)
OVER = make(Rest, started_at=at(9), ended_at=at(10))
DONE: tuple[tuple[str, Facts, str], ...] = (
    ("rest", OVER, "rest E-1 --for PURPOSE --started WHEN --until WHEN"),
    ("filter", FILTER, "filter E-1 --medium paper --pore SIZE --out VOLUME"),
    ("rinse", make(Rinse), "rinse E-1 --with LOT --in VOLUME --out VOLUME --to WHERE"),
    ("decant", make(Decant), "decant E-1 VOLUME"),
    ("measure", make(Measurement), "measure E-1 WHAT READING"),
    ("makeup", make(MakeUp), "makeup E-1 VOLUME --with LOT"),
)
MACERATE = FormulaStep("rest", rest_for=RestFor.MACERATE)
CHILL = FormulaStep("rest", rest_for=RestFor.CHILL)
TWICE = FormulaStep("filter", passes_min=2)
ONCE = FormulaStep("filter")
PACK = FormulaStep("bottle")


def missing(number: int, what: str, todo: str) -> list[Finding]:
    return stop(
        f"Step {number} of orange version 1, {what}, is not in the book of E-1.",
        "Record it",
        f"pottle {todo}",
    )


def rest_for(what: str) -> str:
    return f"rest E-1 --for {what} --started WHEN --until WHEN"


def too_few(passed: int, asked: int) -> list[Finding]:
    return stop(
        f"E-1 had {passed} of the {asked} passes that orange version 1 asks for.",
        "Filter it again",
        "pottle filter E-1 --medium paper --pore SIZE --out VOLUME",
    )


STEPS = [
    *(
        Case(f"the step {verb} is done", *stepped((FormulaStep(verb),), facts))
        for verb, facts, _ in DONE
    ),
    *(
        Case(
            f"the step {verb} is not in the book",
            *stepped((FormulaStep("start"), FormulaStep(verb))),
            missing(2, verb, todo),
        )
        for verb, _, todo in DONE
    ),
    *(
        Case(f"the step {verb} is told by other rules", *stepped((FormulaStep(verb),)))
        for verb in ("start", "add", "finish")
    ),
    *(
        Case(f"after the step {verb} nothing is asked for", *stepped((FormulaStep(verb), MACERATE)))
        for verb in ("bottle", "labels")
    ),
    Case(
        "rested for one thing, not for the other",
        *stepped((MACERATE, CHILL), OVER),
        missing(2, "rest to chill", rest_for("chill")),
    ),
    Case(
        "two steps are missing, both told",
        *stepped((MACERATE, FormulaStep("decant"))),
        missing(1, "rest to macerate", rest_for("macerate")) + missing(2, "decant", DONE[3][2]),
    ),
    Case(
        "the bottles of a batch that missed a step",
        *released(
            packed("P-1", make(Labels, printed=15, used=15, spoiled=0), bulk=lot("E-1")),
            formula=make(Formula, steps=(CHILL, PACK)),
        ),
        missing(1, "rest to chill", rest_for("chill")),
    ),
    Case("as many passes as asked", *stepped((TWICE,), FILTER, FILTER)),
    Case("too few passes", *stepped((TWICE,), FILTER), too_few(1, 2)),
    Case("too few passes for two steps", *stepped((TWICE, ONCE), FILTER, FILTER), too_few(2, 3)),
    Case("no pass at all is told once", *stepped((TWICE,)), missing(1, "filter", DONE[1][2])),
]

READ = FormulaStep("measure", words="Read the base before the essence goes in.")
BRIX = FormulaStep("measure", words="Degrees Brix of the base, at room temperature.")
PH = FormulaStep("measure", words="pH, by the strip")
EITHER = FormulaStep("measure", words="Brix or density")


def read(what: str) -> Measurement:
    return make(Measurement, what=Measured(what))


def unread(number: int, what: str) -> list[Finding]:
    return missing(number, f"measure {what}", f"measure E-1 {what} READING")


def no_other(number: int, verb: str, place: int) -> list[Finding]:
    return missing(number, verb, DONE[place][2])


def going_on(number: int) -> list[Finding]:
    return stop(
        f"Step {number} of orange version 1, rest to macerate, was begun and still goes on in the "
        "book of E-1.",
        "If it is over",
        "pottle rest E-1 --end",
    )


BEGUN = make(Rest, started_at=at(9))
ENDED = make(Rest, started_at=at(9), ended_at=at(10), began=2)
OWN = [
    Case("two readings for two steps", *stepped((READ, READ), read("brix"), read("brix"))),
    Case(
        "one reading for two steps", *stepped((READ, READ), read("brix")), no_other(2, "measure", 4)
    ),
    Case(
        "no reading for two steps",
        *stepped((READ, READ)),
        no_other(1, "measure", 4) + no_other(2, "measure", 4),
    ),
    Case("each step's own reading, in any order", *stepped((BRIX, PH), read("ph"), read("brix"))),
    Case(
        "two readings, but of one thing",
        *stepped((BRIX, PH), read("brix"), read("brix")),
        unread(2, "ph"),
    ),
    Case("a reading of something else", *stepped((BRIX,), read("temperature")), unread(1, "brix")),
    Case(
        "a step that names its reading has its pick before one that does not",
        *stepped((READ, PH), read("ph"), read("brix")),
    ),
    Case(
        "and leaves nothing to the other",
        *stepped((READ, PH), read("ph")),
        no_other(1, "measure", 4),
    ),
    Case("a step that names two readings is content with any", *stepped((EITHER,), read("abv"))),
    Case(
        "one rest for two rests",
        *stepped((MACERATE, MACERATE), OVER),
        missing(2, "rest to macerate", rest_for("macerate")),
    ),
    Case(
        "a rest that was begun and ended is one rest",
        *stepped((MACERATE, MACERATE), BEGUN, ENDED),
        missing(2, "rest to macerate", rest_for("macerate")),
    ),
    Case("two rests", *stepped((MACERATE, MACERATE), BEGUN, ENDED, OVER)),
    Case("a rest that was begun and never ended", *stepped((MACERATE,), BEGUN), going_on(1)),
    Case(
        "a rest that goes on after one that is over",
        *stepped((MACERATE, MACERATE), BEGUN, ENDED, BEGUN),
        going_on(2),
    ),
    Case("a rest that goes on beside all that are asked for", *stepped((MACERATE,), BEGUN, OVER)),
    Case(
        "a rest for another thing goes on",
        *stepped((CHILL,), BEGUN),
        missing(1, "rest to chill", rest_for("chill")),
    ),
    *(
        Case(
            f"one {verb} for two", *stepped((FormulaStep(verb),) * 2, facts), missing(2, verb, todo)
        )
        for verb, facts, todo in DONE
        if verb not in ("rest", "filter")
    ),
]


@pytest.mark.parametrize("case", [*STEPS, *OWN], ids=str)
def test_a_lot_leaves_when_each_step_of_its_formula_is_in_the_book(case: Case) -> None:
    assert find(WHOLE_GATE, case) == list(case.found)
