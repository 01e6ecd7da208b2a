"""The usual slips of handling: water on the powder, a warm filter, first runnings, a vessel."""

from datetime import timedelta
from typing import Any

import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import (
    Add,
    Decant,
    Draft,
    Entry,
    Facts,
    Filter,
    Look,
    MakeUp,
    Move,
    Rest,
    Rinse,
    Start,
)
from ledger.domain.entries.choices import AddedAs, Cake, MaterialKind, MoveAs, ProductKind, RestFor
from ledger.domain.lots.control import Control, Input, LastHeld, Vessel
from ledger.domain.lots.lot import Status
from ledger.domain.lots.scene import Scene
from ledger.domain.rules import Finding, Severity
from tests.domain.builders import (
    at,
    draft,
    entry,
    grams,
    lot,
    make,
    ml,
    powder,
    scene,
    struck,
    when,
)
from tests.domain.rules.cases import Case, said
from tests.domain.rules.usual.slips import SPIRIT, WATER, among, hm, remarked

CARBONATE = Input("C-1", Measure.MG, Status.IN_STOCK, "carb", MaterialKind.CLARIFIER)
ALL = (WATER, SPIRIT, CARBONATE)
ON_POWDER = hm(
    "water on carbonate",
    "W-1 is water, and there is clarifier in E-1 or in its cake: watery liquid takes up some of "
    "it, turns alkaline and may throw a haze.",
    "Rinse with the spirit that the batch is made of; look at a diluted sample.",
)
POWDER, PASS = make(Add, source="C-1"), make(Filter)
WATERED: tuple[Facts, ...] = (
    make(Add, source="W-1"),
    make(MakeUp, source="W-1"),
    make(Rinse, source="W-1", volume_out=ml(5)),
)


def on(*before: Facts | Entry) -> Scene:
    return among(*ALL, state=lot("E-1", *before, on_hand=420_000))


WATERY = [
    *(
        Case(f"{facts.KIND} of water on the powder", draft(facts), on(POWDER), ON_POWDER)
        for facts in WATERED
    ),
    *(Case(f"{facts.KIND} of water without powder", draft(facts), on()) for facts in WATERED),
    *(
        Case(f"{facts.KIND} of spirit on the powder", draft(facts), on(POWDER))
        for facts in (make(Add), make(MakeUp), make(Rinse))
    ),
    *(
        Case(
            f"{facts.KIND} of water when the powder is filtered off", draft(facts), on(POWDER, PASS)
        )
        for facts in WATERED[:2]
    ),
    Case(
        "a rinse with water of the cake that holds the powder",
        draft(WATERED[2]),
        on(POWDER, PASS),
        ON_POWDER,
    ),
    Case(
        "water before any powder went in, written down after",
        draft(WATERED[0], happened=when(at(9))),
        on(entry(POWDER, 2, at(10))),
    ),
    Case(
        "water on the powder before it was filtered off, written down after",
        draft(WATERED[0], happened=when(at(9))),
        on(entry(POWDER, 2, at(8)), entry(PASS, 3, at(10))),
        ON_POWDER,
    ),
    Case(
        "water put in the place of other water, on the powder of the same second",
        draft(WATERED[0], happened=when(at(9)), corrects=3),
        replace(on(entry(POWDER, 2, at(9)), entry(PASS, 4, at(9))), corrected=entry(WATERED[0], 3)),
        ON_POWDER,
    ),
    Case(
        "water when more powder went in after a pass",
        draft(WATERED[0]),
        on(POWDER, PASS, POWDER),
        ON_POWDER,
    ),
]


def chilled(temp_mdegc: int | None) -> Rest:
    return make(Rest, purpose=RestFor.CHILL, temp_mdegc=temp_mdegc)


def ran(temp_mdegc: int | None) -> Any:
    return draft(make(Filter, temp_mdegc=temp_mdegc, cake=Cake.SAME))


def warmed(chill: str, ran_at: str) -> list[Finding]:
    return hm(
        "warmed",
        f"E-1 was chilled at {chill} and filtered at {ran_at}: what the cold threw may have "
        "dissolved again.",
        "Look at it cold before it leaves.",
    )


SETTLED = make(Rest, purpose=RestFor.SETTLE, temp_mdegc=2000)
COLD = [
    Case("filtered 5 degrees warmer", ran(7000), scene(lot("E-1", chilled(2000)))),
    Case(
        "filtered before it was chilled, written down after",
        draft(make(Filter, temp_mdegc=20_000, cake=Cake.SAME), happened=when(at(9))),
        scene(lot("E-1", entry(chilled(2000), 2, at(10)))),
    ),
    Case(
        "filtered warmer than that",
        ran(7001),
        scene(lot("E-1", chilled(2000))),
        warmed("2 °C", "7.001 °C"),
    ),
    Case(
        "chilled below zero",
        ran(0),
        scene(lot("E-1", chilled(-18_000))),
        warmed("−18 °C", "0 °C"),
    ),
    Case(
        "the last chilling counts",
        ran(7000),
        scene(lot("E-1", chilled(-18_000), chilled(2000))),
    ),
    Case("a pass after the one that ran cold", ran(20_000), scene(lot("E-1", chilled(2000), PASS))),
    Case("settled, not chilled", ran(20_000), scene(lot("E-1", SETTLED))),
    Case("chilled at nobody knows what", ran(20_000), scene(lot("E-1", chilled(None)))),
    Case("filtered at nobody knows what", ran(None), scene(lot("E-1", chilled(2000)))),
]

FIRST = hm(
    "first runnings",
    "No first runnings were returned on the first pass: they carry fines and fibres.",
    "Return them until they run bright, and say how much with --first-runnings.",
)
RUNNINGS = [
    Case("none returned on the first pass", draft(make(Filter)), scene(lot()), FIRST),
    Case(
        "none returned from a fresh cake",
        draft(make(Filter, cake=Cake.FRESH)),
        scene(lot()),
        FIRST,
    ),
    Case("returned", draft(make(Filter, first_runnings=ml(20))), scene(lot())),
    Case("through the same cake", draft(make(Filter, cake=Cake.SAME)), scene(lot())),
    Case("through the cake of another lot", draft(make(Filter, cake_of="E-0")), scene(lot())),
    Case("on the second pass", draft(make(Filter, pass_no=2)), scene(lot())),
]

MEDIA = [
    Case(
        "a medium that is not said",
        draft(make(Filter, medium="unsaid", pass_no=2)),
        scene(lot()),
        hm(
            "medium",
            "What it ran through is not said, so no cause of haze can be sought in it.",
            'Say it with: pottle correct ENTRY --set medium=paper --because "left unsaid"',
        ),
    ),
    Case("a medium", draft(make(Filter, medium="paper", pass_no=2)), scene(lot())),
]


def held(product: str, kind: ProductKind = ProductKind.ESSENCE, code: str = "L-1") -> Control:
    return Control(last_held=LastHeld("jar 1", code, product, kind))


DIRTY = hm(
    "vessel",
    "jar 1 last held Wintergreen essence (L-1) and no cleaning of it is in the book since.",
    'If it was cleaned: pottle clean "jar 1" --how HOW --at WHEN',
)
STRONG = held("Wintergreen essence")
STARTED, RESTED = draft(make(Start)), draft(make(Rest))
VESSELS = [
    Case("begun in a vessel that held another flavour", STARTED, scene(control=STRONG), DIRTY),
    Case("a rest of a lot that is unknown", draft(make(Rest)), scene(control=STRONG)),
    Case("rested in one", RESTED, scene(lot(), control=STRONG), DIRTY),
    Case("it held the same product", STARTED, scene(control=held("Orange essence"))),
    Case("it held the lot itself", RESTED, scene(lot(), control=held("Old name", code="E-1"))),
    Case(
        "it held base syrup, which has no flavour",
        STARTED,
        scene(control=held("Base syrup", ProductKind.BASE_SYRUP)),
    ),
    Case("it was cleaned, or never held anything", STARTED, scene()),
    Case("rested, and its start was struck", RESTED, scene(struck(lot()), control=STRONG)),
    *(
        Case(f"{facts.KIND} takes no vessel", draft(facts), scene(lot(), control=STRONG))
        for facts in (make(Add), make(Decant), make(Look))
    ),
]

UNSEEN = hm("witness", "Nobody is named who saw 6 of P-1 destroyed.", "Say who did with --witness.")
DESTROYED = [
    Case("destroyed", draft(make(Move, moved_as=MoveAs.DESTROYED), "P-1"), scene(), UNSEEN),
    Case("seen", draft(make(Move, moved_as=MoveAs.DESTROYED, witness="Edda Fell"))),
    Case("broken", draft(make(Move, moved_as=MoveAs.BREAKAGE))),
]

AGAIN = make(Add, source="C-1", amount=grams(40))


def twice(ago: str, amount: str = "40 g") -> list[Finding]:
    """Return what is asked of an addition told twice."""
    return said(
        Severity.ASK,
        "added twice",
        f"{amount} of C-1 went into E-1 {ago}, in entry 7.",
        "If the command was given twice, leave it; if as much went in again, say so with "
        "--because.",
    )


def after(minutes: float, facts: Add = AGAIN, **changes: Any) -> tuple[Draft, Scene]:
    """Return an addition some minutes after one of 40 g, and the scene before it."""
    was = entry(AGAIN, 7, at(10))
    then = when(at(10) + timedelta(minutes=minutes))
    return draft(facts, happened=then, **changes), scene(lot("E-1", was))


TWICE = [
    Case("the same in the same moment", *after(0), twice("just before")),
    Case("the same four minutes after", *after(4), twice("4 min before")),
    Case(
        "the same, written otherwise",
        *after(1, replace(AGAIN, amount=replace(grams(40), written="0.04 kg"))),
        twice("1 min before", "0.04 kg"),
    ),
    Case("the same a minute and a half after", *after(1.5), twice("2 min before")),
    Case("the same told as four minutes earlier", *after(-4), twice("4 min after")),
    Case(
        "the same of a lot whose name is known",
        after(1)[0],
        replace(after(1)[1], sources=(powder(),)),
        said(
            Severity.ASK,
            "added twice",
            "40 g of Carbonate, C-1, went into E-1 1 min before, in entry 7.",
            "If the command was given twice, leave it; if as much went in again, say so with "
            "--because.",
        ),
    ),
    Case("the same five minutes after", *after(5)),
    Case("the same told as five minutes earlier", *after(-5)),
    Case("another amount", *after(1, replace(AGAIN, amount=grams(41)))),
    Case("of another lot", *after(1, replace(AGAIN, source="C-2"))),
    Case("as a top-up", *after(1, replace(AGAIN, added_as=AddedAs.TOP_UP))),
    Case("in the place of an entry", *after(1, corrects=7)),
]

FILLING = draft(make(Add))


def in_jar(would_hold_ml: float) -> Scene:
    jar = Vessel("jar 1", 5_000_000, round(would_hold_ml * 1000))
    return scene(lot(), control=Control(vessel=jar))


SIZES = [
    *(Case(f"{held} mL in a jar of 5 L", FILLING, in_jar(held)) for held in (4999, 5000, 5100)),
    Case(
        "more in a jar than reading and warmth explain",
        FILLING,
        in_jar(5100.001),
        hm(
            "vessel",
            "With this about 5.1 L are in E-1, more than the 5 L that jar 1 holds.",
            "Check the amounts; where it stands in another vessel, say so with its next rest: "
            "pottle rest E-1 --vessel NAME",
        ),
    ),
]
CASES = [*WATERY, *COLD, *RUNNINGS, *MEDIA, *VESSELS, *SIZES, *DESTROYED, *TWICE]


@pytest.mark.parametrize("case", CASES, ids=str)
def test_slips_of_handling_are_remarked_on_where_they_matter(case: Case) -> None:
    assert remarked(case) == list(case.found)
