"""Labels are for goods that may leave, one a bottle, and add up."""

from datetime import date
from typing import Any

import pytest

from ledger.domain.entries import Judge, Labels
from ledger.domain.entries.choices import Across, Verdict
from ledger.domain.rules import Finding
from ledger.domain.rules.always import labels
from tests.domain.builders import draft, make, packed, scene
from tests.domain.rules.cases import HM, WHY, Case, find, said

SHEET = make(Labels, printed=15, used=None, spoiled=None)
NONE = make(Labels, printed=0, used=None, spoiled=None)
HELD, REJECTED = (make(Judge, verdict=verdict) for verdict in (Verdict.HOLD, Verdict.REJECT))


def printed(facts: Labels, *before: Any, **lot: Any) -> tuple[Any, Any]:
    return draft(facts, "P-1"), scene(packed("P-1", *before, **lot))


def barred(why: str, word: str = "SPECIMEN") -> list[Finding]:
    todo = (
        "Print no labels for it; if it must be, say why with --because: they are printed with "
        f"{word} across."
    )
    return said(WHY, "labels", why, todo)


def again(what: str) -> list[Finding]:
    todo = "Say what becomes of all of them: pottle label P-1 --used N --spoiled N"
    return said(HM, "labels", what, todo)


MAY_LEAVE = [
    Case("one a bottle", *printed(SHEET)),
    Case("none at all", *printed(NONE, HELD)),
    Case("of what is on hold", *printed(make(Labels, printed=2, used=None, spoiled=None,
         across=Across.HOLD), HELD), barred("P-1 is on hold.", "HOLD")),
    Case("of what is rejected", *printed(make(Labels, printed=2, used=None, spoiled=None,
         across=Across.SPECIMEN), REJECTED), barred("P-1 is rejected.")),
    Case("past its date", *printed(make(Labels, printed=2, used=None, spoiled=None,
         across=Across.SPECIMEN), best_before=date(2026, 3, 1)),
         barred("P-1 was best before 2026-03-01; this is 2026-03-02.")),
    Case("when nothing is there", *printed(make(Labels, printed=2, used=None, spoiled=None,
         across=Across.SPECIMEN), on_hand=0),
         barred("Nothing of P-1 is there any more.")),
]  # fmt: skip
ONCE = [
    Case("more than bottles", *printed(make(Labels, printed=16, used=None)),
         again("16 labels are more than its 15 bottles.")),
    Case("again, and more than bottles", *printed(SHEET, SHEET),
         again("15 labels of P-1 were printed before; with these 30 are more than its 15 "
               "bottles.")),
    Case("again, for the rest", *printed(make(Labels, printed=5, used=None),
         make(Labels, printed=10, used=10)),
         again("10 labels of P-1 were printed before, and these besides.")),
    Case("a specimen besides", *printed(make(Labels, printed=1, used=None, spoiled=None,
         across=Across.SPECIMEN), SHEET)),
    Case("after specimens", *printed(SHEET, make(Labels, printed=9, used=None,
         across=Across.HOLD))),
]  # fmt: skip
ADD_UP = [
    Case("labels left over from before", *printed(make(Labels, printed=0, used=2, spoiled=0),
         make(Labels, printed=15, used=13, spoiled=None))),
    Case("all labels accounted for in two steps",
         *printed(make(Labels, printed=0, used=3, spoiled=1),
         make(Labels, printed=15, used=9, spoiled=2))),
    Case("one more than was left by what was used and spoiled before",
         *printed(make(Labels, printed=0, used=4, spoiled=1),
         make(Labels, printed=15, used=9, spoiled=2)),
         said(WHY, "labels",
              "16 labels used and spoiled are more than the 15 printed for P-1.",
              "Count the labels again; if it is so, say why with --because.")),
    Case("more used and spoiled than printed",
         *printed(make(Labels, printed=0, used=15, spoiled=2), SHEET),
         said(WHY, "labels",
              "17 labels used and spoiled are more than the 15 printed for P-1.",
              "Count the labels again; if it is so, say why with --because.")),
]  # fmt: skip


@pytest.mark.parametrize("case", [*MAY_LEAVE, *ONCE, *ADD_UP], ids=str)
def test_labels_are_for_what_may_leave_one_a_bottle_and_add_up(case: Case) -> None:
    assert find(labels.RULES, case) == list(case.found)


def test_labels_of_a_lot_that_is_unknown_are_counted_without_it() -> None:
    """That the lot is unknown is told by another rule."""
    told = draft(make(Labels, printed=3, used=4, spoiled=None, across=None))
    assert list(labels.labels_add_up(told, scene())) == said(
        WHY,
        "labels",
        "4 labels used and spoiled are more than the 3 printed for E-1.",
        "Count the labels again; if it is so, say why with --because.",
    )
