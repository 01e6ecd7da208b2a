"""Making up goes up, a rinse runs through, bottles hold what was drawn."""

from typing import Any

import pytest

from ledger.domain.entries import Bottle, Filter, Finish, MakeUp, Rinse
from ledger.domain.rules import Finding
from ledger.domain.rules.always import batch as making
from tests.domain.builders import (
    at,
    draft,
    entry,
    grams,
    lot,
    make,
    ml,
    oil,
    packed,
    powder,
    scene,
    when,
)
from tests.domain.rules.cases import HM, NO, WHY, Case, find, said

LOW = lot(on_hand=430_000)
RECKONED = lot(on_hand=430_000, was_reckoned=True)


def up(to: float, used: float, source: str = "O-1") -> Any:
    return draft(make(MakeUp, volume=ml(to), used=ml(used), source=source))


def make_up(what: str, todo: str) -> list[Finding]:
    return said(NO, "make-up", what, todo)


CHECK_BOTH = "Check both volumes, or record what else went in first: pottle add ..."
LARGER = "Measure it and give a larger volume, or record a plain addition: pottle add ..."
SYRUP = lot("S-1", on_hand=2_000_000, solids_mg=1_000_000)
MADE_UP = [
    Case("430 up to 450 with 20", up(450, 20), scene(LOW, oil())),
    Case("with a little more, which mixing takes away", up(450, 40), scene(LOW, oil())),
    Case("a syrup up to its volume", draft(make(MakeUp, volume=ml(2950)), "S-1"), scene(SYRUP)),
    Case(
        "a syrup, which takes up its sugar without growing by all of it",
        draft(make(MakeUp, volume=ml(2500)), "S-1"),
        scene(SYRUP),
    ),
    Case("with as much as mixing may take away", up(475, 70), scene(LOW, oil())),
    Case("nothing is known of the lot", up(450, 20), scene()),
    *(
        Case(
            f"430 up to {to}",
            up(to, 20),
            scene(LOW, oil()),
            make_up(f"E-1 holds 430 mL already, so it cannot be made up to {to} mL.", LARGER),
        )
        for to in (430, 400)
    ),
    *(
        Case(f"a reckoned 430 up to {to}", up(to, used), scene(RECKONED, oil()))
        for to, used in ((422, 1), (430, 20), (450, 20))
    ),
    Case(
        "a reckoned 430 up to what no doubt of it explains",
        up(421, 1),
        scene(RECKONED, oil()),
        make_up("E-1 holds 430 mL already, so it cannot be made up to 421 mL.", LARGER),
    ),
    Case(
        "too little to reach the volume",
        up(450, 5),
        scene(LOW, oil()),
        make_up(
            "5 mL cannot have made E-1 up to 450 mL: the book says 430 mL before it.", CHECK_BOTH
        ),
    ),
    Case(
        "too little to bring a syrup there",
        draft(make(MakeUp, volume=ml(3800)), "S-1"),
        scene(SYRUP),
        make_up(
            "20 mL cannot have made S-1 up to 3800 mL: 2 L of liquid and 1 kg of solids make at "
            "most 3 L before it.",
            CHECK_BOTH,
        ),
    ),
    Case(
        "far too much for the volume",
        up(450, 50),
        scene(LOW, oil()),
        said(
            HM,
            "make-up",
            "430 mL of E-1 and 50 mL make 480 mL; mixing cannot have brought that down to 450 mL.",
            "Check how much was used, and whether something was drawn off before.",
        ),
    ),
    Case(
        "with a powder, by volume, to less: all told",
        up(400, 20, "C-1"),
        scene(LOW, powder()),
        make_up(
            "C-1 is not counted by volume, so nothing can be made up with it.",
            "Make up with a liquid; weigh solids in with: pottle add ...",
        )
        + make_up("E-1 holds 430 mL already, so it cannot be made up to 400 mL.", LARGER),
    ),
    Case(
        "a weight used is only told to be one",
        draft(make(MakeUp, used=grams(500))),
        scene(LOW, oil()),
        said(
            NO,
            "volume",
            "500 g is not a volume, so it cannot be the volume used to make it up.",
            "Give a volume, such as 430 mL.",
        ),
    ),
]


def rinsed(volume_in: float, volume_out: float, source: str = "O-1") -> Any:
    return draft(make(Rinse, volume_in=ml(volume_in), volume_out=ml(volume_out), source=source))


FILTERED = lot("E-1", make(Filter, volume_in=ml(445), volume_out=ml(430)))
TWICE = lot("E-1", make(Filter), make(Filter, volume_in=ml(430), volume_out=ml(425)))

PASSED = make(Filter, volume_in=ml(445), volume_out=ml(430))
RINSED_ONCE = lot("E-1", PASSED, make(Rinse, volume_in=ml(30), volume_out=ml(40)))
RINSED_DRY = lot("E-1", PASSED, make(Rinse, volume_in=ml(30), volume_out=ml(50)))


def more_through(out: float, held: int) -> list[Finding]:
    return said(
        WHY,
        "rinse",
        f"{out} mL ran through for 30 mL of rinse, but the filter had kept back no more than "
        f"{held} mL.",
        "Read both volumes again; if it is so, say why with --because.",
    )


def cake_gave(out: float) -> list[Finding]:
    return said(
        HM,
        "rinse",
        f"{out} mL ran through for 30 mL of rinse: the rest is batch liquid that the cake had "
        "held.",
        "",
    )


RINSED = [
    Case("less through than put on", rinsed(30, 27), scene(FILTERED, oil())),
    Case("all through", rinsed(30, 30), scene(FILTERED, oil())),
    Case(
        "a drop of what the cake held",
        rinsed(30, 30.001),
        scene(FILTERED, oil()),
        cake_gave(30.001),
    ),
    Case("some of what the cake held", rinsed(30, 45), scene(FILTERED, oil()), cake_gave(45)),
    Case("more than it held", rinsed(30, 46), scene(FILTERED, oil()), more_through(46, 15)),
    Case("what two passes left", rinsed(30, 50), scene(TWICE, oil()), cake_gave(50)),
    Case("more than two passes left", rinsed(30, 51), scene(TWICE, oil()), more_through(51, 20)),
    Case("a cake that the book knows nothing of", rinsed(30, 31), scene(), more_through(31, 0)),
    Case("what an earlier rinse left", rinsed(30, 35), scene(RINSED_ONCE, oil()), cake_gave(35)),
    Case(
        "what an earlier rinse had fetched",
        rinsed(30, 36),
        scene(RINSED_ONCE, oil()),
        more_through(36, 5),
    ),
    Case(
        "an earlier rinse that fetched all and more",
        rinsed(30, 31),
        scene(RINSED_DRY, oil()),
        more_through(31, 0),
    ),
    Case(
        "rinsed before it was filtered, written down after",
        draft(make(Rinse, volume_in=ml(30), volume_out=ml(31)), happened=when(at(9))),
        scene(lot("E-1", entry(PASSED, 2, at(10))), oil()),
        more_through(31, 0),
    ),
    Case(
        "rinsed with a powder",
        rinsed(30, 27, "C-1"),
        scene(FILTERED, powder()),
        said(
            NO,
            "rinse",
            "C-1 is not counted by volume, so a cake cannot be rinsed with it.",
            "Name the liquid lot it was rinsed with.",
        ),
    ),
]

DONE = lot("E-1", make(Finish))


def filled(*bulk: Any, **changes: Any) -> tuple[Any, Any]:
    facts = make(Bottle, **changes)
    return draft(facts, "P-1", opens=packed().opened), scene(None, *bulk)


FILLED = [
    Case("fifteen of 30 mL from 450", *filled(DONE)),
    Case("more drawn than filled", *filled(DONE, drawn=ml(455))),
    Case("from a received lot", *filled(oil("E-1"))),
    Case(
        "less drawn than filled",
        *filled(DONE, drawn=ml(449)),
        said(
            NO,
            "fill",
            "15 bottles of 30 mL hold 450 mL, more than the 449 mL drawn.",
            "Read the volume drawn again, or count the bottles again.",
        ),
    ),
    Case(
        "from a batch that is not finished",
        *filled(lot()),
        said(
            HM,
            "fill",
            "E-1 is not finished: its yield is not in the book.",
            "Finish it with all that came out, at a time before the filling: "
            "pottle finish E-1 VOLUME --at WHEN",
        ),
    ),
    Case("numbered 1 to 15", *filled(DONE, first_bottle=1, last_bottle=15)),
    Case("only the first number", *filled(DONE, first_bottle=1)),
    Case("only the last number", *filled(DONE, last_bottle=15)),
    Case(
        "numbered 1 to 14",
        *filled(DONE, first_bottle=1, last_bottle=14),
        said(
            NO,
            "fill",
            "The numbers 1 to 14 are not those of 15 bottles.",
            "Give the numbers of the first and the last bottle that were filled.",
        ),
    ),
]


@pytest.mark.parametrize("case", [*MADE_UP, *RINSED, *FILLED], ids=str)
def test_what_goes_in_comes_out_or_it_is_told(case: Case) -> None:
    assert find(making.RULES, case) == list(case.found)
