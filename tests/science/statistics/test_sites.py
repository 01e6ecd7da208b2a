"""Where failures sit: a batch whose lots failed more than those of others."""

from fractions import Fraction

from ledger.science.statistics.sites import adjusted_sites, sites
from ledger.science.statistics.suspects import LEVEL
from tests.science.statistics.judged import lot, observed


def test_the_batch_that_failed_is_told_allowing_for_all_batches() -> None:
    """Four of four lots of one batch and none of eight others: once in C(12, 4) = 495."""
    lots = [
        observed(f"S-{n}", n < 4, f"E-{n // 4}", batch=f"E-{n // 4}", product="Syrup")
        for n in range(12)
    ]
    groups = sites(lots, frozenset({"E-0", "E-1", "E-2"}))
    assert [group.causes for group in groups] == [(lot("E-0"),), (lot("E-1"),), (lot("E-2"),)]
    assert adjusted_sites(groups, LEVEL)[0] == Fraction(3, 495)


def test_a_batch_behind_every_lot_is_no_site() -> None:
    lots = [observed(f"S-{n}", n < 2, "E-0", batch="E-0") for n in range(4)]
    assert sites(lots, frozenset({"E-0"})) == []


def test_a_batch_that_went_into_none_of_the_lots_is_no_site() -> None:
    lots = [observed(f"S-{n}", n < 2, "E-0", batch="E-0") for n in range(4)]
    assert sites(lots, frozenset({"E-9"})) == []
