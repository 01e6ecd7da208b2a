"""What became of labels: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError
from tests.keeper import Keeper
from tests.service.cases import Refused, Said, check_recorded, check_refused
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
    "labels": (
        "labels",
        {"lot": "BPS-001-X", "printed": "10", "used": "3", "spoiled": "1"},
        None,
        {"printed": 10, "used": 3, "spoiled": 1},
    ),
}

REFUSED: dict[str, Refused] = {
    "labels without a number": (
        "labels",
        {"lot": "BPS-001-X", "printed": "ten"},
        InputError,
        (('"ten" is not a number of labels.', "Write a number."),),
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "labels")
