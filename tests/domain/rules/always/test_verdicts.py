"""A decision says why, and a second look is somebody else's."""

from typing import Any

import pytest

from ledger.domain.entries import Check, Facts, Judge, Note, Withdrawal
from ledger.domain.entries.choices import Verdict
from ledger.domain.rules import Finding, Severity
from ledger.domain.rules.always import verdicts
from tests.domain.builders import draft, entry, lot, make, oil, scene
from tests.domain.rules.cases import HM, Case, find, said

HELD = entry(make(Judge, verdict=Verdict.HOLD), 5, reason="a ring at the neck.")


def told(what: str, example: str) -> list[Finding]:
    return said(
        Severity.WHY,
        "verdict",
        f"E-1 cannot {what} without a reason.",
        f'Say why: --because "{example}"',
    )


def judged(verdict: Verdict, *before: Any) -> tuple[Any, Any]:
    return draft(make(Judge, verdict=verdict)), scene(lot("E-1", *before))


def checked(by: str, own: Facts | None = None, *, counts: bool = True) -> tuple[Any, Any]:
    about = entry(own, 7) if own else None
    facts = make(Check, about=7 if own else None)
    around = scene(lot("E-1", make(Note)), checked=about, checked_is_in_force=counts)
    return draft(facts, by=by), around


def on_hold(cause: str) -> list[Finding]:
    todo = "Say with --because why that is gone."
    return said(Severity.WHY, "hold", f"E-1 is on hold{cause}.", todo)


CASES = [
    Case("a hold", *judged(Verdict.HOLD), told("be put on hold", "a customer found a ring")),
    Case("a rejection", *judged(Verdict.REJECT), told("be rejected", "smells of solvent")),
    Case("rework", *judged(Verdict.REWORK),
         told("be sent to rework", "hazy after the second pass")),
    Case("a recall", *judged(Verdict.RECALL), told("be recalled", "two customers found it cloudy")),
    Case("a release", *judged(Verdict.RELEASE)),
    Case("the end of a hold", *judged(Verdict.RELEASE, HELD), on_hold(": a ring at the neck")),
    Case("the end of an old hold without a reason",
         *judged(Verdict.RELEASE, make(Judge, verdict=Verdict.HOLD)), on_hold("")),
    Case("a hold that is over", *judged(Verdict.RELEASE, HELD, make(Judge))),
    Case("a correction asks for its own", draft(make(Judge, verdict=Verdict.HOLD), corrects=5),
         scene(lot())),
    Case("a withdrawal", draft(make(Withdrawal), None), scene(), said(
        Severity.WHY, "withdrawal", "orange version 1 cannot be withdrawn without a reason.",
        'Say why: --because "the yield was never reached"')),
    Case("a check by another", *checked("CD", make(Note))),
    Case("a check of what was struck", *checked("CD", make(Note), counts=False), said(
        Severity.IMPOSSIBLE, "check", "Entry 7 was struck or corrected, so it counts no longer.",
        "See which entry counts now: pottle journal --entry 7")),
    Case("a check of what was struck, put right", draft(make(Check, about=7), by="CD", corrects=9),
         scene(checked=entry(make(Note), 7), checked_is_in_force=False)),
    Case("a check of one's own entry", *checked("AB", make(Note)), said(
        HM, "own check", "This is no second check: entry 7 is AB's own.",
        "Have it checked: pottle check --entry 7 --by INITIALS")),
    Case("a check of one's own lot", *checked("AB"), said(
        HM, "own check", "This is no second check: AB worked on E-1.",
        "Have it checked: pottle check E-1 --by INITIALS")),
    Case("a check of a lot that another made", *checked("CD")),
    Case("a check of a delivery by who took it in", draft(make(Check)), scene(oil("E-1"))),
    Case("a check of no lot", draft(make(Check), None), scene()),
]  # fmt: skip


@pytest.mark.parametrize("case", CASES, ids=str)
def test_decisions_say_why_and_checks_are_by_another(case: Case) -> None:
    assert find(verdicts.RULES, case) == list(case.found)
