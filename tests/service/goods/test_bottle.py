"""Filling, selling and judging: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import FindingError, InputError, ReasonNeededError
from tests.keeper import Keeper
from tests.service.cases import EACH, UL, Refused, Said, amount, check_recorded, check_refused

RECORDED: dict[str, Said] = {
    "a filling": (
        "bottle",
        {
            "source": "PS-001-T",
            "pack": "1 x 200mL",
            "drawn": "205mL",
            "bottles": "LOT-001-X",
            "fill_check": "241.2",
        },
        "BPS-002-V",
        {
            "source": "PS-001-T",
            "count": 1,
            "size": amount(200_000, UL, "200mL"),
            "drawn": amount(205_000, UL, "205mL"),
            "bottles": "LOT-001-X",
            "fill_check_mg": 241_200,
        },
    ),
    "labels": (
        "labels",
        {"lot": "BPS-001-X", "printed": "10", "used": "3", "spoiled": "1"},
        None,
        {"printed": 10, "used": 3, "spoiled": 1},
    ),
    "bottles broken": (
        "send",
        {"lot": "BPS-001-X", "amount": "1", "moved_as": "breakage"},
        None,
        {"moved_as": "breakage", "amount": amount(1_000_000, EACH, "1")},
    ),
    "a verdict": (
        "judge",
        {"lot": "BPS-001-X", "verdict": "release"},
        None,
        {"verdict": "release"},
    ),
    "a complaint": (
        "complain",
        {"lot": "BPS-001-X", "symptom": "cloudy", "party": "The Arcade", "mixed": "1:7"},
        None,
        {"symptom": "cloudy", "party": "The Arcade", "mixed": "1:7"},
    ),
}

REFUSED: dict[str, Refused] = {
    "a pack that is none": (
        "bottle",
        {"source": "PS-001-T", "pack": "one crate"},
        InputError,
        (
            (
                '"one crate" is not a pack, because it has no x between a count and a size.',
                "Write a count, x and a size, such as 15 x 250 mL.",
            ),
        ),
    ),
    "a sale of what is not released": (
        "send",
        {"lot": "BPS-001-X", "amount": "1"},
        ReasonNeededError,
        (
            (
                "BPS-001-X is not released; it is packed.",
                "Release it first: pottle release BPS-001-X (or say why with --because).",
            ),
        ),
    ),
    "a release with things in its way": (
        "judge",
        {"lot": "OE-001-5", "verdict": "release"},
        FindingError,
        (
            (
                "OE-001-5 has not been looked at.",
                "Look at it: pottle look OE-001-5 GRADE --of neat",
            ),
            (
                "OE-001-5 has no yield in the book.",
                "Finish it with what came out: pottle finish OE-001-5 VOLUME",
            ),
        ),
    ),
    "a verdict that is none": (
        "judge",
        {"lot": "OE-001-5", "verdict": "fine"},
        InputError,
        (('"fine" is not a verdict.', "Choose one of: hold, release, reject, rework, recall."),),
    ),
    "labels without a number": (
        "labels",
        {"lot": "BPS-001-X", "printed": "ten"},
        InputError,
        (('"ten" is not a number of labels.', "Write a number."),),
    ),
    "a complaint about nothing": (
        "complain",
        {"lot": "BPS-001-X", "symptom": ""},
        InputError,
        (("The symptom is missing.", "Give the symptom in words."),),
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)
