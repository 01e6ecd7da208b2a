"""Ending a batch with what came out: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import RefusedError
from tests.keeper import Keeper
from tests.service.cases import UL, Refused, Said, amount, check_recorded, check_refused
from tests.service.said_alone import Alone, check_said_alone
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
    "a finish": (
        "finish",
        {"lot": "OE-001-5", "volume": "240mL", "temp": "21"},
        None,
        {"volume": amount(240_000, UL, "240mL"), "temp_mdegc": 21_000},
    ),
}

REFUSED: dict[str, Refused] = {
    "a finish of more than went in": (
        "finish",
        {"lot": "OE-001-5", "volume": "600mL"},
        RefusedError,
        (
            (
                "600mL came out, but OE-001-5 held less: the book says 420 mL.",
                "Record what else went in first: pottle add ...",
            ),
        ),
    ),
    "a finish of a delivery": (
        "finish",
        {"lot": "NS-001-J", "volume": "1L"},
        RefusedError,
        (
            (
                "NS-001-J is a received lot; only a batch that is made here can take the step "
                "finish.",
                'Start a batch for it: pottle start --product "NAME" --kind KIND --target VOLUME',
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


ALONE: Alone = (
    {"lot": "OE-001-5", "volume": "400mL"},
    {
        "temp": ("20 °C", {"temp_mdegc": 20_000}),
        "waste": ("4mL", {"waste": amount(4_000, UL, "4mL")}),
        "labour": ("45min", {"labour_minutes": 45}),
    },
)


def test_a_word_that_is_said_alone_changes_its_own_field_and_no_other(bench: Keeper) -> None:
    check_said_alone(bench, "finish", ALONE)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "finish")
