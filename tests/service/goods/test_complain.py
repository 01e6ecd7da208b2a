"""Complaints: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError
from ledger.service.goods.complain import _sha256
from tests.keeper import Keeper
from tests.path import Lots
from tests.service.cases import Refused, Said, check_recorded, check_refused
from tests.service.said_alone import Alone, check_said_alone
from tests.service.wrong_words import check_wrong_words

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
    "a complaint with a photo, and times as they were told": (
        "complain",
        {
            "lot": "BPS-001-X",
            "symptom": "ring",
            "opened": "yesterday 10:30",
            "stored": "on the sill",
            "photo": "ring.jpg",
            "photo_sha256": f" {'0AF' * 21}1 ",
            "words": "It was full.",
            "answer_days": "3",
        },
        None,
        {
            "symptom": "ring",
            "opened": "2026-03-08 10:30",
            "stored": "on the sill",
            "photo": "ring.jpg",
            "photo_sha256": f"{'0af' * 21}1",
            "words": "It was full.",
            "answer_days": 3,
        },
    ),
    "a complaint of what was opened on a day": (
        "complain",
        {"lot": "BPS-001-X", "symptom": "flat", "opened": " 2026-03-08 "},
        None,
        {"symptom": "flat", "opened": "2026-03-08", "answer_days": 7},
    ),
    "a complaint of what was opened at a time that is told in words": (
        "complain",
        {"lot": "BPS-001-X", "symptom": "flat", "opened": "last week"},
        None,
        {"symptom": "flat", "opened": "last week", "answer_days": 7},
    ),
}

REFUSED: dict[str, Refused] = {
    "a complaint about nothing": (
        "complain",
        {"lot": "BPS-001-X", "symptom": "", "answer_days": "soon"},
        InputError,
        (
            ("The symptom is missing.", "Give the symptom in words."),
            ('"soon" is not a number of days.', "Write a number."),
        ),
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


def test_a_hash_of_blanks_or_nothing_is_none() -> None:
    assert [_sha256(text) for text in (None, "", "  ")] == [None] * 3


ALONE: Alone = (
    {"lot": "PS-001-T", "symptom": "cloudy"},
    {
        "party": ("Bar", {"party": "Bar"}),
        "opened": ("yesterday", {"opened": "2026-03-08"}),
        "stored": ("in the sun", {"stored": "in the sun"}),
        "mixed": ("1:7", {"mixed": "1:7"}),
        "words": ("Like milk.", {"words": "Like milk."}),
        "answer_days": ("3", {"answer_days": 3}),
    },
)


def test_a_word_that_is_said_alone_changes_its_own_field_and_no_other(bench: Keeper) -> None:
    check_said_alone(bench, "complain", ALONE)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "complain")
