"""What went together is told apart by products in which one of the two did no harm."""

from fractions import Fraction

from msgspec.structs import replace

from ledger.science.statistics.elsewhere import has, set_apart
from ledger.science.statistics.exact import Table
from ledger.science.statistics.suspects import Cause, Observed, Sort
from tests.science.statistics.suspected import OIL, observed, suspect

SPIRIT = Cause(Sort.LOT, "SPIRIT-1")
HAD_BOTH = replace(suspect(OIL, Table(5, 0, 0, 4)), not_separable_from=(SPIRIT,))


def clear(number: int, *inputs: str) -> list[Observed]:
    return [observed(f"L-{place}", "", *inputs) for place in range(number)]


def test_what_enough_clear_batches_elsewhere_had_is_set_apart() -> None:
    """Five failed with it here and four of another product were clear with it: p is 1 in 126."""
    found = set_apart(HAD_BOTH, clear(4, "SPIRIT-1"))
    assert (found.cause, found.not_separable_from) == (OIL, ())
    (apart,) = found.set_apart
    assert (apart.cause, apart.clear_elsewhere, apart.p) == (SPIRIT, 4, Fraction(1, 126))


def test_too_few_clear_batches_elsewhere_acquit_nothing() -> None:
    assert set_apart(HAD_BOTH, clear(1, "SPIRIT-1")) == HAD_BOTH


def test_never_is_all_that_went_together_set_apart() -> None:
    assert set_apart(HAD_BOTH, clear(4, "OIL-1", "SPIRIT-1")) == HAD_BOTH


def test_clear_lots_of_one_batch_count_once() -> None:
    together = [replace(lot, batch="E-9") for lot in clear(4, "SPIRIT-1")]
    assert set_apart(HAD_BOTH, together) == HAD_BOTH


def test_a_lot_has_what_went_in_and_how_it_was_made() -> None:
    (lot,) = clear(1, "OIL-1")
    cold = replace(lot, settings={"chill": "up to 4 h"})
    assert has(lot, OIL)
    assert not has(lot, SPIRIT)
    assert has(cold, Cause(Sort.SETTING, "chill", "up to 4 h"))
    assert not has(lot, Cause(Sort.SETTING, "chill", "up to 4 h"))


def test_a_tenth_is_small_enough_to_set_apart() -> None:
    """Two that failed among five: one way of ten."""
    two = replace(suspect(OIL, Table(2, 0, 0, 4)), not_separable_from=(SPIRIT,))
    (apart,) = set_apart(two, clear(3, "SPIRIT-1")).set_apart
    assert (apart.clear_elsewhere, apart.p) == (3, Fraction(1, 10))
    assert set_apart(two, clear(2, "SPIRIT-1")) == two
