"""The values that a correction gives, read as their own verb reads them."""

import pytest

from ledger.domain.entries import Look
from tests.keeper import Keeper


@pytest.mark.parametrize(
    ("word", "is_so"), [("Yes", True), ("true", True), ("1", True), ("no", False), ("0", False)]
)
def test_a_correction_says_yes_or_no(word: str, is_so: bool, bench: Keeper) -> None:
    told = f"sediment={word}; ring={'no' if is_so else 'yes'}"
    look = bench.do("correct", entry="19", changes=told, because="seen again").entry.draft.facts
    assert isinstance(look, Look)
    assert (look.sediment, look.ring) == (is_so, not is_so)
