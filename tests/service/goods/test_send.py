"""Goods that leave: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import ReasonNeededError
from tests.keeper import Keeper
from tests.service.cases import EACH, Refused, Said, amount, check_recorded, check_refused

RECORDED: dict[str, Said] = {
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
        {"lot": "BPS-001-X", "amount": "1"},
        ReasonNeededError,
        (
            (
                "BPS-001-X is not released; it is packed.",
                "Release it first: pottle release BPS-001-X (or say why with --because).",
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
