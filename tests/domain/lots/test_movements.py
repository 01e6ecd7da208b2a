"""What each kind of entry moves: postings in order, and the level it measures."""

from typing import Any

import pytest

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import (
    FACTS,
    Add,
    Bottle,
    Count,
    Decant,
    Draft,
    Filter,
    Finish,
    Labels,
    Level,
    MakeUp,
    Material,
    Move,
    Opened,
    Posting,
    Receipt,
    Rinse,
)
from ledger.domain.entries.choices import LotType, MoveAs, Place, RinseTo
from ledger.domain.lots.movements import movements
from ledger.domain.lots.scene import Scene
from tests.domain.builders import draft, grams, lot, make, ml, oil, packed, pieces, powder, scene

Moved = tuple[tuple[Posting, ...], Level | None]

HERE = Opened("O-9", LotType.RECEIVED, Measure.UL)
APART = Opened("R-1", LotType.RINSE, Measure.UL)
KNOWN = oil(material=make(Material, density_mg_per_l=840_000))
SYRUP = lot("S-1")
MOVES: list[tuple[str, Draft, Scene, Moved]] = [
    (
        "a receipt comes from the supplier",
        draft(make(Receipt), "O-9", opens=HERE),
        scene(),
        ((Posting(None, "O-9", Place.SUPPLIER, 100_000, 100_000),), None),
    ),
    (
        "an addition by volume",
        draft(make(Add)),
        scene(lot(), oil()),
        ((Posting("O-1", "E-1", None, 30_000, 30_000),), None),
    ),
    (
        "an addition by weight of a liquid is taken and given by volume",
        draft(make(Add, amount=grams(25.2))),
        scene(lot(), KNOWN),
        ((Posting("O-1", "E-1", None, 30_000, 30_000),), None),
    ),
    (
        "a weight of a liquid without a density moves nothing",
        draft(make(Add, amount=grams(25.2))),
        scene(lot(), oil()),
        ((Posting("O-1", "E-1", None, 0, 0),), None),
    ),
    (
        "a solid is counted only where it left",
        draft(make(Add, source="C-1", amount=grams(15))),
        scene(lot(), powder()),
        ((Posting("C-1", "E-1", None, 15_000, 0),), None),
    ),
    (
        "a solid by volume is taken by weight",
        draft(make(Add, source="C-1", amount=ml(10))),
        scene(lot(), powder(material=make(Material, density_mg_per_l=1_600_000))),
        ((Posting("C-1", "E-1", None, 16_000, 0),), None),
    ),
    (
        "bottles are counted where they left and bring what was filled into them",
        draft(make(Add, source="P-1", amount=pieces(2))),
        scene(lot(), packed()),
        ((Posting("P-1", "E-1", None, 2_000_000, 60_000),), None),
    ),
    (
        "a pass takes a paper, and what it was wetted with is carried",
        draft(make(Filter, paper="F-1", wetted_with="O-1", cake_of="E-9")),
        scene(lot()),
        (
            (
                Posting("E-9", "E-1", None, 0, 0),
                Posting("O-1", "E-1", None, 0, 0),
                Posting("F-1", "E-1", None, 1_000_000, 0),
            ),
            Level("E-1", 430_000),
        ),
    ),
    (
        "labels are taken from their blank ones",
        draft(make(Labels, printed=15, stock="L-1"), "P-1"),
        scene(packed()),
        ((Posting("L-1", "P-1", None, 15_000_000, 0),), None),
    ),
    (
        "a filtrate is all there is",
        draft(make(Filter)),
        scene(lot()),
        ((), Level("E-1", 430_000)),
    ),
    (
        "an old cake carries its batch along, unmeasured",
        draft(make(Filter, cake_of="E-0")),
        scene(lot(), lot("E-0")),
        ((Posting("E-0", "E-1", None, 0, 0),), Level("E-1", 430_000)),
    ),
    (
        "a rinse into the batch gives what ran through",
        draft(make(Rinse)),
        scene(lot(), oil()),
        ((Posting("O-1", "E-1", None, 30_000, 27_000),), None),
    ),
    (
        "a rinse kept apart carries the batch along",
        draft(make(Rinse, went_to=RinseTo.APART), opens=APART),
        scene(lot(), oil()),
        (
            (
                Posting("O-1", "R-1", None, 30_000, 27_000),
                Posting("E-1", "R-1", None, 0, 0),
            ),
            None,
        ),
    ),
    (
        "a rinse to waste",
        draft(make(Rinse, went_to=RinseTo.WASTE)),
        scene(lot(), oil()),
        ((Posting("O-1", None, Place.WASTE, 30_000, 0),), None),
    ),
    (
        "what was decanted is what is left",
        draft(make(Decant, heel=ml(20))),
        scene(lot()),
        ((), Level("E-1", 420_000)),
    ),
    (
        "a make-up takes what was used and measures what came of it",
        draft(make(MakeUp)),
        scene(lot(), oil()),
        ((Posting("O-1", "E-1", None, 20_000, 20_000),), Level("E-1", 450_000)),
    ),
    (
        "a finish measures",
        draft(make(Finish)),
        scene(lot()),
        ((), Level("E-1", 448_000)),
    ),
    (
        "a count measures in the lot's own measure",
        draft(make(Count, amount=pieces(14)), "P-1"),
        scene(packed()),
        ((), Level("P-1", 14_000_000)),
    ),
    (
        "a filling takes volume and gives bottles",
        draft(make(Bottle, source="S-1", drawn=ml(455)), "P-1", opens=packed().opened),
        scene(None, SYRUP),
        ((Posting("S-1", "P-1", None, 455_000, 15_000_000),), None),
    ),
    (
        "a filling takes its bottles and closures",
        draft(make(Bottle, bottles="B-1", caps="C-1"), "P-1", opens=packed().opened),
        scene(None, SYRUP),
        (
            (
                Posting("E-1", "P-1", None, 450_000, 15_000_000),
                Posting("B-1", "P-1", None, 15_000_000, 0),
                Posting("C-1", "P-1", None, 15_000_000, 0),
            ),
            None,
        ),
    ),
    *(
        (
            f"goods go to {word}",
            draft(make(Move, moved_as=word), "P-1"),
            scene(packed()),
            ((Posting("P-1", None, Place(word), 6_000_000, 0),), None),
        )
        for word in MoveAs
        if word is not MoveAs.RETURNED
    ),
    (
        "goods come back",
        draft(make(Move, moved_as=MoveAs.RETURNED), "P-1"),
        scene(packed()),
        ((Posting(None, "P-1", Place.RETURNED, 6_000_000, 6_000_000),), None),
    ),
]


@pytest.mark.parametrize(
    ("told", "around", "moved"), [row[1:] for row in MOVES], ids=[row[0] for row in MOVES]
)
def test_an_entry_moves_what_its_facts_say(told: Draft, around: Scene, moved: Moved) -> None:
    assert movements(told, around) == moved


MOVING = {type(row[1].facts) for row in MOVES}


@pytest.mark.parametrize("kind", sorted(set(FACTS) - {facts.KIND for facts in MOVING}))
def test_every_other_kind_moves_nothing(kind: str) -> None:
    facts: Any = make(FACTS[kind])
    opens = lot().opened if kind == "start" else None
    assert movements(draft(facts, opens=opens), scene(lot())) == ((), None)


@pytest.mark.parametrize("kind", sorted(FACTS))
def test_what_is_about_no_lot_moves_nothing(kind: str) -> None:
    facts: Any = make(FACTS[kind])
    assert movements(draft(facts, None), scene()) == ((), None)
