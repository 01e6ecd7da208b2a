"""Verdicts on a lot: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import FindingError, InputError
from tests.keeper import Keeper
from tests.service.cases import Refused, Said, check_recorded, check_refused
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
    "a verdict": (
        "judge",
        {"lot": "BPS-001-X", "verdict": "release"},
        None,
        {"verdict": "release"},
    ),
}

REFUSED: dict[str, Refused] = {
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
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "judge")
