"""What went together is told apart by products in which one of the two did no harm."""

from fractions import Fraction

from msgspec.structs import replace

from ledger.science.statistics.elsewhere import has, set_apart
from ledger.science.statistics.exact import Table
from ledger.science.statistics.suspects import LEVEL, Cause, Observed, Sort
from tests.science.statistics.suspected import OIL, observed, suspect

SPIRIT = Cause(Sort.LOT, "SPIRIT-1")
HAD_BOTH = replace(suspect(OIL, Table(5, 0, 0, 4)), not_separable_from=(SPIRIT,))


def clear(number: int, *inputs: str) -> list[Observed]:
    return [observed(f"L-{place}", "", *inputs) for place in range(number)]


def test_what_enough_clear_lots_elsewhere_had_is_set_apart() -> None:
    """Five failed with it here and four of another product were clear with it: p is 1 in 126."""
    found = set_apart(HAD_BOTH, clear(4, "SPIRIT-1"), LEVEL)
    assert (found.cause, found.not_separable_from) == (OIL, ())
    (apart,) = found.set_apart
    assert (apart.cause, apart.clear_elsewhere, apart.p) == (SPIRIT, 4, Fraction(1, 126))


def test_too_few_clear_lots_elsewhere_acquit_nothing() -> None:
    assert set_apart(HAD_BOTH, clear(1, "SPIRIT-1"), LEVEL) == HAD_BOTH


def test_never_is_all_that_went_together_set_apart() -> None:
    assert set_apart(HAD_BOTH, clear(4, "OIL-1", "SPIRIT-1"), LEVEL) == HAD_BOTH


def test_a_lot_has_a_cause_or_lacks_it_when_its_absence_is_meant() -> None:
    (lot,) = clear(1, "OIL-1")
    cold = replace(lot, settings={"chill": "up to 4 h"})
    assert has(lot, OIL)
    assert not has(lot, replace(OIL, is_absent=True))
    assert has(cold, Cause(Sort.SETTING, "chill", "up to 4 h"))
    assert has(lot, Cause(Sort.SETTING, "chill", "up to 4 h", is_absent=True))
