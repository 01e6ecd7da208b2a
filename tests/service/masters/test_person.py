"""People of the book: what is recorded, and what is refused in which words."""

import pytest

from ledger.domain.evidence.commitments import SALT_SIZE, commitment
from ledger.errors import InputError, RefusedError
from tests.keeper import Keeper
from tests.service.cases import Refused, Said, check_recorded, check_refused

RECORDED: dict[str, Said] = {
    "a person": (
        "person",
        {"initials": "cd", "name": "Cora Dunne", "role": "bottler"},
        None,
        {
            "initials": "CD",
            "commitment": commitment(bytes(SALT_SIZE), {"name": "Cora Dunne", "role": "bottler"}),
        },
    ),
}

REFUSED: dict[str, Refused] = {
    "initials that are none": (
        "person",
        {"initials": "A1", "name": " "},
        InputError,
        (
            ('"A1" are not initials.', "Write one to four letters A-Z."),
            ("The name is missing.", "Give the name in words."),
        ),
    ),
    "initials taken": (
        "person",
        {"initials": "ab", "name": "Abel Byrne"},
        RefusedError,
        (("The initials AB are in the book already.", "Choose others for this person."),),
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def test_a_person_may_enter_herself(bench: Keeper) -> None:
    bench.by = "CD"
    made = bench.do("person", initials="CD", name="Cora Dunne")
    assert made.entry.draft.by == "CD"
