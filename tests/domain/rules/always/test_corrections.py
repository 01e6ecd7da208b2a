"""Keeping: corrections and strikes leave nothing standing on air."""

from typing import Any

import pytest

from ledger.domain.entries import Add, Forget, House, Note, Party, Plan, Rest, Start, Strike
from ledger.domain.rules import Finding
from ledger.domain.rules.always import corrections as keeping
from tests.domain.builders import draft, entry, lot, make, ml, scene
from tests.domain.rules.cases import NO, WHY, Case, find, said

OLD = entry(make(Add), 5)
MENDED = make(Add, amount=ml(32))
BECAUSE: dict[str, Any] = {"corrects": 5, "reason": "misread the cylinder"}
STRIKE = draft(make(Strike), **BECAUSE)
STRIKE_OF_NO_LOT = draft(make(Strike), None, **BECAUSE)


def wrong(what: str, todo: str, rule: str = "correction") -> list[Finding]:
    return said(NO, rule, what, todo)


def stale(number: int = 5) -> list[Finding]:
    return wrong(
        f"Entry {number} is not in force: it was corrected or struck, or is a strike.",
        f"pottle journal --entry {number} shows which entry counts now.",
    )


NO_REASON = said(
    WHY,
    "correction",
    "Entry 5 cannot be changed without a reason.",
    'Say why: --because "what was wrong"',
)
STARTED = entry(make(Start), 5, opens=lot().opened)
CORRECTIONS = [
    Case("an entry that corrects none", draft(MENDED)),
    Case("a correction in force", draft(MENDED, **BECAUSE), scene(corrected=OLD)),
    Case("a strike in force", STRIKE, scene(corrected=OLD)),
    Case(
        "no such entry",
        draft(MENDED, **BECAUSE),
        scene(),
        wrong(
            "There is no entry 5 in the book.",
            "pottle journal lists the entries with their numbers.",
        ),
    ),
    Case(
        "corrected already",
        draft(MENDED, **BECAUSE),
        scene(corrected=OLD, corrected_is_in_force=False),
        stale(),
    ),
    Case("a strike is not struck", STRIKE, scene(corrected=entry(make(Strike), 5)), stale()),
    Case("no reason", draft(MENDED, corrects=5), scene(corrected=OLD), NO_REASON),
    Case(
        "an empty reason",
        draft(make(Strike), corrects=5, reason=""),
        scene(corrected=OLD),
        NO_REASON,
    ),
    Case(
        "no reason and corrected already: both told",
        draft(MENDED, corrects=5),
        scene(corrected=OLD, corrected_is_in_force=False),
        stale() + NO_REASON,
    ),
    Case(
        "another kind",
        draft(make(Rest), **BECAUSE),
        scene(corrected=OLD),
        wrong(
            "Entry 5 is of the kind add, so it cannot become one of the kind rest.",
            'Strike it, then record what really happened: pottle strike 5 --because "WHY"',
        ),
    ),
    Case(
        "another lot",
        draft(MENDED, "E-2", **BECAUSE),
        scene(corrected=OLD),
        wrong(
            "Entry 5 is about E-1, so it cannot be moved to E-2.",
            'Strike it, then record it about the right lot: pottle strike 5 --because "WHY"',
        ),
    ),
    Case(
        "a lot for a note about none",
        draft(make(Note), **BECAUSE),
        scene(corrected=entry(make(Note), 5, lot=None)),
        wrong(
            "Entry 5 is about no lot, so it cannot be moved to E-1.",
            'Strike it, then record it about the right lot: pottle strike 5 --because "WHY"',
        ),
    ),
    Case(
        "no lot for a note about one",
        draft(make(Note), None, **BECAUSE),
        scene(corrected=entry(make(Note), 5)),
        wrong(
            "Entry 5 is about E-1, so it cannot be moved to no lot.",
            'Strike it, then record it about the right lot: pottle strike 5 --because "WHY"',
        ),
    ),
    Case(
        "a start keeps the lot it opened",
        draft(make(Start, target=ml(900)), opens=lot().opened, **BECAUSE),
        scene(corrected=STARTED),
    ),
    Case(
        "a start that would open none",
        draft(make(Start), **BECAUSE),
        scene(corrected=STARTED),
        wrong(
            "Entry 5 opens E-1, and what corrects it must open the same.",
            'Strike it, then record what really happened: pottle strike 5 --because "WHY"',
        ),
    ),
    Case(
        "an addition that would open a lot",
        draft(MENDED, opens=lot().opened, **BECAUSE),
        scene(corrected=OLD),
        wrong(
            "Entry 5 opens no lot, and what corrects it must open the same.",
            'Strike it, then record what really happened: pottle strike 5 --because "WHY"',
        ),
    ),
]


def stands(others: str) -> Any:
    return wrong(
        f"Entry 5 opened a lot that {others} of.",
        "Strike those first, or correct this one instead: pottle correct 5 --set FIELD=VALUE "
        '--because "WHY"',
        "strike",
    )


STRIKES = [
    Case("nothing stands on it", STRIKE, scene(corrected=STARTED)),
    Case(
        "one entry stands on it",
        STRIKE,
        scene(corrected=STARTED, uses_of_opened=1),
        stands("1 other entry speaks"),
    ),
    Case(
        "two entries stand on it",
        STRIKE,
        scene(corrected=STARTED, uses_of_opened=2),
        stands("2 other entries speak"),
    ),
    Case(
        "a correction of what others stand on",
        draft(make(Start, target=ml(900)), opens=lot().opened, **BECAUSE),
        scene(corrected=STARTED, uses_of_opened=2),
    ),
    Case(
        "a correction of the house",
        draft(make(House, country="IE"), None, **BECAUSE),
        scene(corrected=entry(make(House), 5, lot=None)),
    ),
    Case(
        "the house",
        STRIKE,
        scene(corrected=entry(make(House), 1, lot=None)),
        wrong(
            "Entry 1 says whose book this is, so it cannot be struck.",
            'Correct it instead: pottle correct 1 --set FIELD=VALUE --because "WHY"',
            "strike",
        ),
    ),
]


PLANNED = entry(make(Plan), 5, lot=None)
PLANS = [
    Case("a plan struck", STRIKE_OF_NO_LOT, scene(corrected=PLANNED)),
    Case(
        "a plan corrected",
        draft(make(Plan), None, **BECAUSE),
        scene(corrected=PLANNED),
        wrong(
            "Entry 5 plans a trial, and the order and the marks of its jars are drawn from what it "
            "says, so it cannot be corrected.",
            'Strike it, then plan the trial under another name: pottle strike 5 --because "WHY"',
        ),
    ),
]
FORGOTTEN = entry(Party("P1", code="P1"), 5, lot=None)
ANEW = "If they are to be in the book again, tell them anew: pottle party add ..."
FORGETTING = [
    Case(
        f"{what} of a forgetting",
        made,
        scene(corrected=entry(make(Forget), 5, lot=None)),
        wrong(
            "Entry 5 says who was forgotten; what was erased cannot be brought back, so it stays.",
            ANEW,
        ),
    )
    for what, made in (
        ("a correction", draft(make(Forget, party="P2"), None, **BECAUSE)),
        ("a strike", STRIKE_OF_NO_LOT),
    )
] + [
    Case(
        "a correction of who was forgotten",
        draft(Party("Quay Bar", code="P1"), None, **BECAUSE),
        scene(corrected=FORGOTTEN),
        wrong("What entry 5 told of was forgotten, so it cannot be corrected.", ANEW),
    ),
    Case("a strike of who was forgotten", STRIKE_OF_NO_LOT, scene(corrected=FORGOTTEN)),
]


@pytest.mark.parametrize("case", [*CORRECTIONS, *STRIKES, *PLANS, *FORGETTING], ids=str)
def test_only_what_counts_is_changed_and_with_a_reason(case: Case) -> None:
    assert find(keeping.RULES, case) == list(case.found)
