"""Instruments: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError
from tests.keeper import Keeper
from tests.service.cases import Refused, Said, check_recorded, check_refused

RECORDED: dict[str, Said] = {
    "an instrument that was set": (
        "equipment",
        {"name": "Scale 1", "words": "Set to zero."},
        None,
        {"name": "Scale 1", "words": "Set to zero."},
    ),
}

REFUSED: dict[str, Refused] = {
    "an instrument without a name": (
        "equipment",
        {"name": "", "words": " "},
        InputError,
        (
            ("The name is missing.", "Give the name in words."),
            ("The finding is missing.", "Give the finding in words."),
        ),
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)
