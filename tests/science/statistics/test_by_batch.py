"""Lots of one batch share its luck, so they are counted once."""

import pytest

from ledger.science.statistics.by_batch import with_batches
from ledger.science.statistics.exact import Table
from ledger.science.statistics.suspects import Cause, Observed, Sort
from tests.science.statistics.suspected import OIL, observed, suspect

LOTS = (
    observed("S-1", "E-1", "OIL-1", is_failed=True),
    observed("S-2", "E-1", "OIL-1"),
    observed("S-3", "E-2", "OIL-1", is_failed=True),
    observed("S-4", "E-3"),
)


def test_a_batch_failed_when_any_of_its_lots_did() -> None:
    assert with_batches(suspect(), LOTS).by_batch == Table(2, 0, 0, 1)


def test_what_differs_within_a_batch_is_not_counted_by_batch() -> None:
    mixed = (*LOTS, observed("S-5", "E-3", "OIL-1"))
    assert with_batches(suspect(), mixed).by_batch is None


@pytest.mark.parametrize(
    ("cause", "lots"),
    [(Cause(Sort.LOT, "E-1"), LOTS), (OIL, LOTS[1:])],
    ids=["the batch itself", "one lot a batch"],
)
def test_a_batch_that_is_the_suspect_or_has_one_lot_says_nothing_else(
    cause: Cause, lots: tuple[Observed, ...]
) -> None:
    assert with_batches(suspect(cause), lots).by_batch is None
