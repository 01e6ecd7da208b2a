"""Cases are of bottles that are there, and each has a number of its own."""

from typing import Any

import pytest

from ledger.domain.entries import Cases
from ledger.domain.rules.always import cases
from tests.domain.builders import draft, entry, lot, make, packed, scene
from tests.domain.rules.cases import HM, NO, WHY, Case, find, said

TWO = make(Cases, count=2, holds=6)
MORE = make(Cases, count=3, holds=6)


def put(facts: Cases, *before: Any, **around: Any) -> tuple[Any, Any]:
    corrected = around.pop("corrected", None)
    return draft(facts, "P-1"), scene(packed("P-1", *before, **around), corrected=corrected)


@pytest.mark.parametrize(
    "case",
    [
        Case("as many as there are", *put(make(Cases, count=1, holds=15))),
        Case("of what is not bottled", draft(TWO), scene(lot()), said(
             NO, "cases", "E-1 is not bottled, so nothing of it stands in cases.",
             'Fill it first: pottle bottle E-1 "15 x 250mL"')),
        Case("none", *put(make(Cases, count=0)), said(
             NO, "cases", "Cases are at least one, with at least one bottle in each.",
             "Write how many of how many, such as 4 x 12.")),
        Case("more than there were", *put(TWO, on_hand_then=11_000_000), said(
             WHY, "cases", "12 bottles in cases are more than were there of P-1: the book says 11.",
             "Count the cases again; if it is so, say why with --because.")),
        Case("more than were filled", *put(TWO, make(Cases, count=1, holds=4)), said(
             HM, "cases", "4 bottles of P-1 stand in cases by the book; with these 12 they are "
             "more than the 15 filled.",
             "Strike the entry of cases that are no more, which this shows: pottle lot P-1")),
        Case("all that were filled", *put(make(Cases, count=1, holds=9), make(Cases, holds=6))),
        Case("none into cases, and none were there", *put(make(Cases, holds=0), on_hand_then=-1),
             said(NO, "cases", "Cases are at least one, with at least one bottle in each.",
             "Write how many of how many, such as 4 x 12.")),
        Case("as many as was told", *put(TWO, corrected=entry(TWO, 7))),
        Case("fewer than was told", *put(make(Cases, count=1), corrected=entry(TWO, 7))),
        Case("more than was told", *put(MORE, corrected=entry(TWO, 7), on_hand_then=18_000_000),
             said(NO, "cases",
             "2 cases have numbers by entry 7, and 3 would need 1 more.",
             'Enter those by themselves: pottle case P-1 "1 x 6"')),
    ],
    ids=str,
)  # fmt: skip
def test_cases(case: Case) -> None:
    assert find(cases.RULES, case) == list(case.found)
