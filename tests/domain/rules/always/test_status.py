"""Status: what is held, rejected, struck or past its date is not used as if it were well."""

from datetime import date
from typing import Any

import pytest

from ledger.domain.entries import (
    Add,
    Bottle,
    Check,
    Complaint,
    Facts,
    Filter,
    Judge,
    Look,
    MakeUp,
    Material,
    Move,
    Note,
    Receipt,
    Rinse,
    Start,
    Strike,
)
from ledger.domain.entries.bench import Factor
from ledger.domain.entries.choices import FoodGrade, MaterialKind, MoveAs, Purpose, Verdict
from ledger.domain.rules import Finding
from ledger.domain.rules.always import status
from tests.domain.builders import at, draft, lot, make, oil, packed, scene, struck, when
from tests.domain.rules.cases import NO, WHY, Case, find, said

ELSE = "Use another lot; if it must be this one, say why with --because."
DRAWS: tuple[Facts, ...] = (
    make(Add),
    make(Bottle, source="O-1"),
    make(Filter, cake_of="O-1"),
    make(MakeUp),
    make(Rinse),
)
"""Facts that draw on the lot O-1."""


def judged(word: str) -> Judge:
    return make(Judge, verdict=Verdict(word))


def why(rule: str, what: str, todo: str = ELSE) -> list[Finding]:
    return said(WHY, rule, what, todo)


LATE = date(2026, 3, 1)
DRAWN = make(Start, planned_by=7, factors=(Factor("oil", "O-1"),))
NOT_FOOD = Material("oil", "Orange oil", MaterialKind.OIL, food_grade=FoodGrade.NO)
MADE_OF_BARRED = "is made of X-1, X-2, now held, rejected or recalled."
SOURCES = [
    *(Case(f"{facts.KIND} of a good lot", draft(facts), scene(lot(), oil())) for facts in DRAWS),
    *(
        Case(
            f"{facts.KIND} of a lot that is {now}",
            draft(facts),
            scene(lot(), lot("O-1", judged(word))),
            why("barred", f"O-1 is {now}."),
        )
        for facts in DRAWS
        for word, now in (("hold", "on hold"), ("reject", "rejected"), ("recall", "recalled"))
    ),
    Case(
        "the last verdict counts",
        draft(make(Add)),
        scene(lot(), lot("O-1", judged("hold"), judged("release"))),
    ),
    Case(
        "looking at a held lot",
        draft(make(Look), "O-1"),
        scene(lot("O-1", judged("hold"))),
    ),
    Case(
        "on its last day, by the writer's clock",
        draft(make(Add), happened=when(at(4), -300)),
        scene(lot(), oil(best_before=LATE)),
    ),
    Case(
        "the day after",
        draft(make(Add)),
        scene(lot(), oil(best_before=LATE)),
        why("past date", "O-1 was best before 2026-03-01; this is 2026-03-02."),
    ),
    Case(
        "made of held lots",
        draft(make(Add)),
        scene(lot(), oil(barred_inputs=("X-1", "X-2"))),
        why("barred input", f"O-1 {MADE_OF_BARRED}"),
    ),
    Case(
        "a held lot that a planned trial drew for its jar",
        draft(make(Add)),
        scene(lot(opening=DRAWN), lot("O-1", judged("hold"), barred_inputs=("X-1",))),
    ),
    Case(
        "another held lot in that jar",
        draft(make(Add)),
        scene(lot(opening=make(Start, planned_by=7)), lot("O-1", judged("hold"))),
        why("barred", "O-1 is on hold."),
    ),
    Case(
        "a held lot in a jar that nobody planned",
        draft(make(Add)),
        scene(
            lot(opening=make(Start, factors=(Factor("oil", "O-1"),))), lot("O-1", judged("hold"))
        ),
        why("barred", "O-1 is on hold."),
    ),
    Case(
        "all that is wrong with a lot, at once",
        draft(make(Add)),
        scene(lot(), lot("O-1", judged("hold"), best_before=LATE, barred_inputs=("X-1", "X-2"))),
        why("barred", "O-1 is on hold.")
        + why("past date", "O-1 was best before 2026-03-01; this is 2026-03-02.")
        + why("barred input", f"O-1 {MADE_OF_BARRED}"),
    ),
    Case(
        "not fit for food by its material",
        draft(make(Add)),
        scene(lot(), oil(material=NOT_FOOD)),
        why("food grade", "O-1 is not fit for food by its papers."),
    ),
    Case(
        "fit for food by its own papers",
        draft(make(Add)),
        scene(lot(), oil(material=NOT_FOOD, opening=make(Receipt, food_grade=FoodGrade.YES))),
    ),
    Case(
        "of unknown grade, into what is for sale",
        draft(make(Add)),
        scene(lot(), oil(opening=make(Receipt, food_grade=FoodGrade.UNKNOWN))),
        said(
            WHY,
            "food grade",
            "O-1 came without word whether it is fit for food, and E-1 is for sale.",
            "Ask its supplier, and then: pottle correct 1 --set food_grade=yes (or say why with "
            "--because).",
        ),
    ),
    Case(
        "of unknown grade, into a trial",
        draft(make(Add)),
        scene(
            lot(opening=make(Start, purpose=Purpose.TRIAL)),
            oil(opening=make(Receipt, food_grade=FoodGrade.UNKNOWN)),
        ),
    ),
    Case(
        "of a grade that nobody asked for",
        draft(make(Add)),
        scene(lot(), oil(opening=make(Receipt, food_grade=None))),
    ),
    Case(
        "bottling what is to be reworked",
        draft(make(Bottle, source="O-1"), "P-1", opens=packed().opened),
        scene(None, lot("O-1", judged("rework"))),
        why(
            "rework",
            "O-1 is to be reworked, not to be filled as it is.",
            "Release it when it is right: pottle release O-1 (or say why with --because).",
        ),
    ),
    Case(
        "reworking what is to be reworked",
        draft(make(Add)),
        scene(lot(), lot("O-1", judged("rework"))),
    ),
]

GONE = said(
    NO,
    "struck",
    "E-1 was struck out as a mistake, so there is no such lot.",
    "Name the lot that it really was; pottle stock lists what is on hand.",
)
STRUCK = [
    Case("work on a struck lot", draft(make(Add)), scene(struck(lot()), oil()), GONE),
    Case(
        "drawing on a struck lot", draft(make(Add), "E-2"), scene(lot("E-2"), struck(lot())), GONE
    ),
    Case("sending a struck lot", draft(make(Move)), scene(struck(lot())), GONE),
    *(
        Case(f"{facts.KIND} about a struck lot", draft(facts), scene(struck(lot())))
        for facts in (make(Note), make(Check), make(Complaint), make(Strike))
    ),
]


def send(word: str, state: Any) -> tuple[Any, Any]:
    return draft(make(Move, moved_as=MoveAs(word)), state.code), scene(state)


def unreleased(code: str, now: str) -> list[Finding]:
    todo = f"Release it first: pottle release {code} (or say why with --because)."
    return why("not released", f"{code} is not released; it is {now}.", todo)


TO_PEOPLE = ("sale", "sample", "tasting", "on-return")
NOT_TO_PEOPLE = ("returned", "breakage", "retained", "destroyed")
OUT = packed("P-1", judged("release"))
TRIAL = make(Start, purpose=Purpose.TRIAL)
TRIED = packed("P-1", judged("release"), bulk=lot("E-1", opening=TRIAL))
NOT_MADE_HERE = why(
    "received lot sold",
    "O-1 is a received lot, not something made here.",
    "Name the packed lot that was sold; if it must be this one, say why with --because.",
)
FOR_SALE = why("trial", "P-1 is of a trial batch, not made for sale.")
GOODS = [
    Case("nothing is known of what is sent", draft(make(Move))),
    *(Case(f"a released lot as {word}", *send(word, OUT)) for word in MoveAs),
    *(
        Case(f"an unreleased lot as {word}", *send(word, packed()), unreleased("P-1", "packed"))
        for word in TO_PEOPLE
    ),
    *(Case(f"an unreleased lot as {word}", *send(word, packed())) for word in NOT_TO_PEOPLE),
    Case("a batch being made", *send("sale", lot()), unreleased("E-1", "being made")),
    *(
        Case(
            f"a held lot as {word}: that it is not released goes without saying",
            *send(word, packed("P-1", judged("hold"))),
            why("barred", "P-1 is on hold."),
        )
        for word in TO_PEOPLE
    ),
    Case(
        "a released lot made of held ones, past its date",
        *send("sale", packed("P-1", judged("release"), best_before=LATE, barred_inputs=("X-1",))),
        why("past date", "P-1 was best before 2026-03-01; this is 2026-03-02.")
        + why("barred input", "P-1 is made of X-1, now held, rejected or recalled."),
    ),
    *(Case(f"a received lot as {word}", *send(word, oil())) for word in ("sample", "destroyed")),
    *(
        Case(f"a received lot as {word}", *send(word, oil()), NOT_MADE_HERE)
        for word in ("sale", "on-return")
    ),
    *(Case(f"a trial as {word}", *send(word, TRIED)) for word in ("sample", "tasting", "retained")),
    *(Case(f"a trial as {word}", *send(word, TRIED), FOR_SALE) for word in ("sale", "on-return")),
]

INTO_SALE = why("trial", "T-1 is of a trial batch, but E-1 is made for sale.")
TRIALS = [
    Case(
        "a trial into a batch for sale",
        draft(make(Add, source="T-1")),
        scene(lot(), lot("T-1", opening=TRIAL)),
        INTO_SALE,
    ),
    Case(
        "made up with a trial",
        draft(make(MakeUp, source="T-1")),
        scene(lot(), lot("T-1", opening=TRIAL)),
        INTO_SALE,
    ),
    Case(
        "through the old cake of a trial",
        draft(make(Filter, cake_of="T-1")),
        scene(lot(), lot("T-1", opening=TRIAL)),
    ),
    Case(
        "a trial into a lot that nobody knows",
        draft(make(Add, source="T-1")),
        scene(None, lot("T-1", opening=TRIAL)),
    ),
    Case(
        "a trial into a trial",
        draft(make(Add, source="T-1")),
        scene(lot(opening=TRIAL), lot("T-1", opening=TRIAL)),
    ),
]


@pytest.mark.parametrize("case", [*SOURCES, *STRUCK, *GOODS, *TRIALS], ids=str)
def test_lots_are_fit_for_their_use_or_it_is_told(case: Case) -> None:
    assert find(status.RULES, case) == list(case.found)
