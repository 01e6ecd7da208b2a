"""Complaints: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError
from tests.keeper import Keeper
from tests.path import Lots
from tests.service.cases import Refused, Said, check_recorded, check_refused

SAID = {
    "symptom": "symptom holds",
    "party": "name of who complains holds",
    "opened": "time of opening holds",
    "stored": "place of storage holds",
    "mixed": "way of mixing holds",
    "photo": "name of the photo holds",
    "words": "words hold",
}
"""What is said in words, and how a refusal begins that is about it."""
RECORDED: dict[str, Said] = {
    "a complaint": (
        "complain",
        {"lot": "BPS-001-X", "symptom": "cloudy", "party": "The Arcade", "mixed": "1:7"},
        None,
        {"symptom": "cloudy", "party": "The Arcade", "mixed": "1:7", "answer_days": 7},
    ),
}

REFUSED: dict[str, Refused] = {
    "a complaint about nothing": (
        "complain",
        {"lot": "BPS-001-X", "symptom": ""},
        InputError,
        (("The symptom is missing.", "Give the symptom in words."),),
    ),
    "a complaint in invisible characters": (
        "complain",
        {"lot": "BPS-001-X"} | dict.fromkeys(SAID, "a\u200bb"),
        InputError,
        tuple(
            (f"The {what} the invisible character U+200B.", "Type it again without it.")
            for what in SAID.values()
        ),
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def test_a_hash_that_is_none_is_refused(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    with pytest.raises(InputError) as raised:
        keeper.do("complain", lot=lots.packed, symptom="cloudy", photo_sha256="abc")
    assert raised.value.problems == (
        (
            '"abc" is not a SHA-256 hash.',
            "It has 64 figures and letters from 0 to 9 and a to f.",
        ),
    )
