"""Genealogy: no circles, bench work on batches only, bottles from liquids."""

from typing import Any

import pytest

from ledger.domain.entries import (
    Add,
    Bottle,
    Decant,
    Facts,
    Filter,
    Finish,
    Judge,
    Labels,
    Look,
    MakeUp,
    Move,
    Rest,
    Rinse,
)
from ledger.domain.entries.choices import RinseTo, Verdict
from ledger.domain.rules import Finding
from ledger.domain.rules.always import genealogy
from tests.domain.builders import (
    at,
    draft,
    lot,
    make,
    ml,
    oil,
    packed,
    powder,
    scene,
    when,
)
from tests.domain.rules.cases import HM, NO, Case, find, said

ADD = make(Add)
LOOK_UP = "Name the lot that it really was; pottle stock lists what is on hand."
APART, WASTE = {"went_to": RinseTo.APART}, {"went_to": RinseTo.WASTE}
OPENS: dict[str, Any] = {"opens": lot("R-1", kind="rinse").opened}
SELF = said(NO, "circle", "E-1 cannot go into itself.", LOOK_UP)
BACK = said(
    NO,
    "circle",
    "E-2 was made from E-1, so it cannot go into E-1: a lot would contain itself.",
    "Start a rework lot and add both to it: pottle start --kind rework ...",
)
MADE_FROM = {"made_from_lot": frozenset({"E-2"})}

CIRCLES = [
    Case("a lot of oil goes into a batch", draft(ADD), scene(lot(), oil())),
    Case("a batch into itself", draft(make(Add, source="E-1")), scene(lot(), lot()), SELF),
    Case("made up with itself", draft(make(MakeUp, source="E-1")), scene(lot(), lot()), SELF),
    Case(
        "a batch through its own old cake",
        draft(make(Filter, cake_of="E-1")),
        scene(lot(), lot()),
        said(
            NO,
            "circle",
            "E-1 cannot go into itself.",
            "For the cake of its own last pass say --cake same; --cake-of is for another lot's.",
        ),
    ),
    Case(
        "what was made from the batch back into it",
        draft(make(Add, source="E-2")),
        scene(lot(), lot("E-2"), **MADE_FROM),
        BACK,
    ),
    Case(
        "rinsed into the batch with itself",
        draft(make(Rinse, source="E-1")),
        scene(lot(), lot()),
        SELF,
    ),
    Case(
        "rinsed into the batch with what was made from it",
        draft(make(Rinse, source="E-2")),
        scene(lot(), lot("E-2"), **MADE_FROM),
        BACK,
    ),
    Case(
        "rinsed with itself to waste",
        draft(make(Rinse, source="E-1", **WASTE)),
        scene(lot(), lot()),
    ),
    Case(
        "rinsed apart with its own first rinse liquor",
        draft(make(Rinse, source="E-2", **APART), **OPENS),
        scene(lot(), lot("E-2", kind="rinse"), **MADE_FROM),
    ),
]

RINSES = [
    Case("apart, with its lot", draft(make(Rinse, **APART), **OPENS), scene(lot(), oil())),
    Case("into the batch, without a lot", draft(make(Rinse)), scene(lot(), oil())),
    Case(
        "apart, without a lot",
        draft(make(Rinse, **APART)),
        scene(lot(), oil()),
        said(
            NO,
            "rinse",
            "Rinse liquor that is kept apart is a lot of its own, but this entry opens none.",
            "Strike the entry and record the rinse anew: pottle rinse ...",
        ),
    ),
    *(
        Case(
            f"a lot, but gone {where}",
            draft(make(Rinse, went_to=to), **OPENS),
            scene(lot(), oil()),
            said(
                NO,
                "rinse",
                f"This rinse is the lot R-1, so it cannot have gone {where}.",
                "Strike the entry and record the rinse anew: pottle rinse ...",
            ),
        )
        for to, where in ((RinseTo.BATCH, "into the batch"), (RinseTo.WASTE, "to waste"))
    ),
]

START = 'Start a batch for it: pottle start --product "NAME" --kind KIND --target VOLUME'
BENCH: tuple[Facts, ...] = (
    ADD,
    make(Rest),
    make(Filter),
    make(Rinse),
    make(Decant),
    make(MakeUp),
    make(Finish),
)
BATCHES = [
    *(Case(f"a batch takes {facts.KIND}", draft(facts), scene(lot())) for facts in BENCH),
    *(
        Case(f"a rinse lot takes {facts.KIND}", draft(facts), scene(lot(kind="rinse")))
        for facts in BENCH
    ),
    *(
        Case(
            f"a {kind} lot does not take {facts.KIND}",
            draft(facts, "X-1"),
            scene(lot("X-1", kind=kind)),
            said(
                NO,
                "not a batch",
                f"X-1 is a {kind} lot; only a batch that is made here can take the step "
                f"{facts.KIND}.",
                START,
            ),
        )
        for kind in ("received", "packed")
        for facts in BENCH
    ),
    Case("a packed lot is looked at and sent", draft(make(Look), "P-1"), scene(packed())),
    Case("a packed lot is sent", draft(make(Move), "P-1"), scene(packed())),
]


def fill(*states: Any, **changes: Any) -> tuple[Any, Any]:
    return draft(make(Bottle, **changes), "P-1", opens=packed().opened), scene(None, *states)


def filling(what: str) -> list[Finding]:
    todo = "Name the right lot; pottle stock lists what is on hand."
    return said(NO, "filling", what, todo)


PACKS = {"bottles": "B-1", "caps": "C-1"}
EMPTIES = (packed("B-1"), packed("C-1"))
FILLINGS = [
    Case("a liquid into counted bottles", *fill(lot(), *EMPTIES, **PACKS)),
    Case("a liquid, packing not told", *fill(lot())),
    Case(
        "a powder into bottles",
        *fill(powder("E-1")),
        filling("E-1 cannot be filled into bottles: it is counted by weight, not by volume."),
    ),
    Case(
        "oil for bottles and powder for closures",
        *fill(lot(), oil("B-1"), powder("C-1"), **PACKS),
        filling("B-1 cannot be the bottles: it is counted by volume, not by number.")
        + filling("C-1 cannot be the closures: it is counted by weight, not by number."),
    ),
]

PIECES = [
    Case(
        f"{facts.KIND} of what is no piece",
        draft(facts),
        scene(lot(), oil()),
        said(
            NO,
            "pieces",
            f"O-1 cannot be the {named}: it is counted by volume, not by number.",
            "Name the right lot; pottle stock lists what is on hand.",
        ),
    )
    for facts, named in (
        (make(Filter, paper="O-1"), "papers"),
        (make(Labels, stock="O-1"), "labels"),
    )
]

FINISHED = lot("E-1", make(Finish))
RELEASED = lot("E-1", make(Finish), make(Judge))
REWORKED = lot("E-1", make(Finish), make(Judge, verdict=Verdict.REWORK))
AGAIN = "again with what came out: pottle finish E-1 VOLUME"
OPENED_AGAIN = ("this opens it again", "Look at it, and finish it")
CHANGES = ("this changes what is in it", "Finish it")
CLOSED = [
    Case("nothing is known of the lot", draft(ADD)),
    *(Case(f"{facts.KIND} before the finish", draft(facts), scene(lot())) for facts in BENCH),
    *(Case(f"{facts.KIND} as rework", draft(facts), scene(REWORKED)) for facts in BENCH),
    Case("an addition told late", draft(ADD, happened=when(at(8, 9, day=1))), scene(FINISHED)),
    Case("a correction", draft(ADD, corrects=3, reason="x"), scene(FINISHED)),
    *(
        Case(
            f"{facts.KIND} after the finish",
            draft(facts),
            scene(FINISHED),
            said(
                HM,
                "finished",
                f"E-1 was finished already; {told}.",
                f"{todo} {AGAIN}",
            ),
        )
        for facts in BENCH
        if not isinstance(facts, Finish | Rest)
        for told, todo in [OPENED_AGAIN if isinstance(facts, Add | MakeUp | Rinse) else CHANGES]
    ),
    Case(
        "an addition after the release",
        draft(ADD),
        scene(RELEASED),
        said(
            HM,
            "finished",
            "E-1 was finished and released already; this opens it again, and it is released no "
            "longer.",
            f"Look at it, and finish it {AGAIN}",
        ),
    ),
    Case(
        "finished again",
        draft(make(Finish, volume=ml(440))),
        scene(FINISHED),
        said(HM, "finished", "E-1 was finished already; from now on it holds 440 mL.", ""),
    ),
]


@pytest.mark.parametrize(
    "case", [*CIRCLES, *RINSES, *BATCHES, *FILLINGS, *PIECES, *CLOSED], ids=str
)
def test_the_trace_stays_without_circles_or_it_is_told(case: Case) -> None:
    assert find(genealogy.RULES, case) == list(case.found)
