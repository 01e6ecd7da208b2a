"""What labels of a lot are, and which word stands across them."""

from datetime import date
from typing import Any

import pytest

from ledger.domain.entries import Judge, Labels
from ledger.domain.entries.choices import Across, Verdict
from ledger.domain.lots.labels import Count, across, count_of, why_not
from tests.domain.builders import lot, make, packed

DAY = date(2026, 3, 2)
SHEET = make(Labels, printed=20, used=15, spoiled=None)


def test_what_was_printed_with_a_word_across_is_no_bottle_label() -> None:
    specimen = make(Labels, printed=3, used=None, spoiled=None, across=Across.SPECIMEN)
    told = count_of(packed("P-1", SHEET, specimen))
    assert (told.printed, told.used, told.spoiled, told.bottles) == (20, 15, 0, 15)
    assert not told.adds_up
    spoiled = make(Labels, printed=0, used=None, spoiled=5)
    assert count_of(packed("P-1", SHEET, specimen, spoiled)).adds_up


@pytest.mark.parametrize(
    ("before", "lot", "word"),
    [
        ((), {}, None),
        ((make(Judge),), {}, None),
        ((make(Judge, verdict=Verdict.HOLD),), {}, Across.HOLD),
        ((make(Judge, verdict=Verdict.RECALL),), {}, Across.SPECIMEN),
        ((make(Judge, verdict=Verdict.REJECT),), {}, Across.SPECIMEN),
        ((), {"best_before": date(2026, 3, 1)}, Across.SPECIMEN),
        ((), {"best_before": DAY}, None),
        ((), {"on_hand": 0}, Across.SPECIMEN),
        ((), {"on_hand": 1}, None),
    ],
)
def test_the_word_across_says_why_it_is_for_no_bottle_that_leaves(
    before: tuple[Judge, ...], lot: dict[str, Any], word: Across | None
) -> None:
    assert across(packed("P-1", *before, **lot), DAY) is word


def test_of_a_lot_that_was_never_filled_no_bottle_is_counted() -> None:
    found = count_of(lot("E-1", make(Labels, printed=3, used=1, spoiled=2, across=None)))
    assert (found, found.adds_up) == (Count(3, 1, 2, 0), False)


def test_why_a_lot_needs_no_labels_is_said_and_first_what_was_decided() -> None:
    past, held = {"best_before": date(2026, 3, 1), "on_hand": 0}, make(Judge, verdict=Verdict.HOLD)
    assert why_not(packed("P-1", held, **past), DAY) == "P-1 is on hold."
    assert why_not(packed("P-1", **past), DAY) == (
        "P-1 was best before 2026-03-01; this is 2026-03-02."
    )
    assert why_not(packed("P-1", on_hand=0), DAY) == "Nothing of P-1 is there any more."
    assert why_not(packed("P-1"), DAY) is None
