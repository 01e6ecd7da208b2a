"""The gate and the clearance together: what they pass over, and all that they tell at once."""

import pytest

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Deviation, Formula, Judge, Look
from ledger.domain.entries.choices import Grade, LookedAt, ProductKind, RestFor, Verdict
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.lots.control import Control, Input
from ledger.domain.lots.lot import Status
from tests.domain.builders import draft, lot, make, oil, packed, scene
from tests.domain.rules.cases import HM, Case, find, said
from tests.domain.rules.release.leaving import WHOLE_GATE, released, stop

BAD = lot("E-1", make(Deviation, about=7), make(Look, grade=Grade.MILKY, ring=True))
ASKS = make(
    Formula,
    steps=(
        FormulaStep("rest", rest_for=RestFor.CHILL),
        FormulaStep("look", looked_at=LookedAt.AS_POURED, dilution="1:7", temp_max_mdegc=5000),
    ),
    wanted_clarity=Grade.CLEAR,
    abv_max_mpct=500,
)
HOLD = ("Rework it, or hold it", 'pottle hold E-1 --because "WHY"')
ALL_OF_IT = [
    *stop(
        "Step 1 of orange version 1, rest to chill, is not in the book of E-1.",
        "Record it",
        "pottle rest E-1 --for chill --started WHEN --until WHEN",
    ),
    *stop(
        "E-1 has not been looked at as poured, 1:7, at most 5 °C since it last changed, as orange "
        "version 1 asks.",
        "Look at it",
        "pottle look E-1 GRADE --of as-poured --dilution 1:7 --temp DEGREES",
    ),
    *stop("The last look at E-1 found it milky; orange version 1 wants it clear or better.", *HOLD),
    *stop("The last look at E-1 found an oil ring.", *HOLD),
    *stop(
        "Deviation 2 has not been reviewed: Something was found.",
        "Review it",
        "pottle check --entry 2",
    ),
    *stop(
        "E-1 has 9 % vol; orange version 1 asks for at most 0.5 % vol.",
        "Measure it, and mend it or its label.",
    ),
    *said(
        HM,
        "self-released",
        "E-1 is self-released: AB made it and releases it, and nobody but its makers has checked "
        "it.",
        "Have it checked: pottle check E-1 --by INITIALS",
    ),
]
ELSEWISE = [
    Case(
        f"a lot that is told to {verdict}",
        draft(make(Judge, verdict=verdict)),
        scene(BAD, control=Control(formula=ASKS, strength_mpct=9000)),
    )
    for verdict in Verdict
    if verdict is not Verdict.RELEASE
]
UNDECIDED = Input("X-1", Measure.UL, Status.FINISHED, product_kind=ProductKind.ESSENCE)
WITHOUT = [
    Case("a lot that follows no formula", *released(BAD, by="AB", formula=None), ALL_OF_IT[-1:]),
    Case(
        "with what is not released in it",
        draft(make(Judge), by="CD"),
        scene(lot(), control=Control(inputs=(UNDECIDED,))),
    ),
    Case(
        "bottles that follow no formula",
        *released(packed(), by="AB", formula=None),
        said(
            HM,
            "self-released",
            "P-1 is self-released: AB made it and releases it, and nobody "
            "but its makers has checked it.",
            "Have it checked: pottle check P-1 --by INITIALS",
        ),
    ),
    Case("a received lot", *released(oil(), by="AB", formula=None)),
    Case("a lot that is not known", draft(make(Judge)), scene()),
    Case(
        "everything at once",
        *released(BAD, by="AB", formula=ASKS, strength_mpct=9000),
        ALL_OF_IT,
    ),
]


@pytest.mark.parametrize("case", [*ELSEWISE, *WITHOUT], ids=str)
def test_the_whole_gate_speaks_at_once_or_not_at_all(case: Case) -> None:
    assert find(WHOLE_GATE, case) == list(case.found)
