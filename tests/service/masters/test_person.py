"""People of the book: what is recorded, and what is refused in which words."""

from pathlib import Path

import pytest

from ledger.domain.evidence.commitments import SALT_SIZE, commitment
from ledger.errors import InputError, RefusedError
from ledger.service.masters.house import init
from tests.keeper import Keeper, SetClock
from tests.path import HOUSE
from tests.service.cases import Refused, Said, check_recorded, check_refused
from tests.service.wrong_words import check_wrong_words

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
    "more than four letters": (
        "person",
        {"initials": "ABCDE", "name": "Anna Bell"},
        InputError,
        (('"ABCDE" are not initials.', "Write one to four letters A-Z."),),
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
    assert bench.do("person", initials=" wxyz ", name="Will").entry.draft.by == "CD"


def test_the_first_person_is_entered_by_herself_and_the_next_by_somebody(tmp_path: Path) -> None:
    clock = SetClock()
    with Keeper(init(str(tmp_path / "new.db"), **HOUSE, clock=clock), clock, by=None) as keeper:
        assert keeper.do("person", initials=" ab ", name="Anna Bell").entry.draft.by == "AB"
        with pytest.raises(RefusedError) as raised:
            keeper.do("person", initials="CD", name="Cora Dunne")
        assert raised.value.problems == (
            (
                "This entry does not say who made it.",
                "Give your initials with --by or set POTTLE_BY.",
            ),
        )


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "person")
