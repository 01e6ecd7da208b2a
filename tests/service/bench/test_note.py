"""Notes: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError, RefusedError
from tests.keeper import Keeper
from tests.service.cases import Refused, Said, check_recorded, check_refused
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
    "a note": ("note", {"text": "The  scale\nsticks."}, None, {"text": "The scale sticks."}),
}

REFUSED: dict[str, Refused] = {
    "a note from the future": (
        "note",
        {"text": "Soon.", "at": "2026-03-10 09:00"},
        RefusedError,
        (
            (
                "2026-03-10 09:00 is in the future; the clock here says 2026-03-09 09:05.",
                "Give the time at which it happened with --at, or leave it out for now.",
            ),
        ),
    ),
    "a note from a place nobody knows": (
        "note",
        {"text": "Heard.", "origin": "hearsay", "at": "noonish"},
        InputError,
        (
            (
                '"noonish" is not a time.',
                "Write 14:30, 3pm, noon, yesterday 18:00, -2h, 2026-03-02 14:30 or 2026-03-02; "
                "~14:30 for about.",
            ),
            (
                '"hearsay" is not an origin.',
                "Choose one of: bench, paper, instrument, memory.",
            ),
        ),
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "note")
