"""Goods that leave: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import ReasonNeededError
from tests.keeper import Keeper
from tests.service.cases import EACH, Refused, Said, amount, check_recorded, check_refused
from tests.service.said_alone import Alone, check_said_alone
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
    "bottles kept back for a market": (
        "send",
        {"lot": "BPS-001-X", "amount": "1", "moved_as": "retained", "party": "A market"},
        None,
        {"moved_as": "retained", "amount": amount(1_000_000, EACH, "1"), "party": "market"},
    ),
    "bottles broken": (
        "send",
        {"lot": "BPS-001-X", "amount": "1", "moved_as": "breakage"},
        None,
        {"moved_as": "breakage", "amount": amount(1_000_000, EACH, "1")},
    ),
}

REFUSED: dict[str, Refused] = {
    "a sale of what is not released": (
        "send",
        {"lot": "BPS-001-X", "amount": "1", "party": "Quay Bar"},
        ReasonNeededError,
        (
            (
                "BPS-001-X is not released; it is packed.",
                "Release it first: pottle release BPS-001-X (or say why with --because).",
            ),
        ),
    ),
    "a sale to nobody": (
        "send",
        {"lot": "BPS-001-X", "amount": "1", "moved_as": "sample"},
        ReasonNeededError,
        (
            (
                "1 of BPS-001-X is given as a sample, and it is not said to whom.",
                'Name them with --to "NAME", or --to market or --to walk-in where nobody can; '
                "if it is not known, say why with --because.",
            ),
            (
                "BPS-001-X is not released; it is packed.",
                "Release it first: pottle release BPS-001-X (or say why with --because).",
            ),
        ),
    ),
    "a sale of several to nobody": (
        "send",
        {"lot": "BPS-001-X", "amount": "2", "moved_as": "sale"},
        ReasonNeededError,
        (
            (
                "2 of BPS-001-X are sold, and it is not said to whom.",
                'Name them with --to "NAME", or --to market or --to walk-in where nobody can; '
                "if it is not known, say why with --because.",
            ),
            (
                "BPS-001-X is not released; it is packed.",
                "Release it first: pottle release BPS-001-X (or say why with --because).",
            ),
        ),
    ),
    "a return from nobody": (
        "send",
        {"lot": "BPS-001-X", "amount": "1", "moved_as": "returned"},
        ReasonNeededError,
        (
            (
                "1 of BPS-001-X came back, and it is not said from whom.",
                'Name them with --from "NAME", or --from market or --from walk-in where nobody '
                "can; if it is not known, say why with --because.",
            ),
            (
                "1 cannot have come back of BPS-001-X: by the book 0 of what went out is still "
                "out.",
                "Check the code on what came back; if it is so, say why with --because.",
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
    {"lot": "PS-001-T", "amount": "10mL", "moved_as": "sample"},
    {
        "party": ("Bar", {"party": "Bar"}),
        "document": ("DN-1", {"document": "DN-1"}),
        "witness": ("CD", {"witness": "CD"}),
    },
)


def test_a_word_that_is_said_alone_changes_its_own_field_and_no_other(bench: Keeper) -> None:
    check_said_alone(bench, "send", ALONE)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "send")
