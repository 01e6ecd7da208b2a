"""The Mantel-Haenszel figures agree with the published example of six departments."""

import json
from math import inf

import pytest
from scipy.stats import chi2

from ledger.science.statistics.association import Odds, Pooled, mantel_haenszel
from ledger.science.statistics.exact import Table
from tests.science.published import REFERENCE

UCB = json.loads((REFERENCE / "stats_examples.json").read_text(encoding="utf-8"))[
    "mantel_haenszel_ucb"
]
STRATA = [
    Table(admitted[0], admitted[1], rejected[0], rejected[1])
    for admitted, rejected in UCB[next(key for key in UCB if key.startswith("strata"))]
]


def test_the_published_admissions() -> None:
    """R, mantelhaen.test(UCBAdmissions): X-squared 1.4269, p 0.2323, common odds 0.9046968."""
    found = mantel_haenszel(STRATA, 0.05)
    published = UCB["published"]
    assert found.odds is not None
    assert round(found.chi_square, 4) == published["X2"]
    assert round(found.p, 4) == published["p"]
    assert round(found.odds.ratio, 7) == published["or"]
    assert found.strata == 6


def test_the_interval_of_the_published_admissions() -> None:
    """R prints 0.7719074 to 1.0603298 (from memory; the reference file computes the same)."""
    odds = mantel_haenszel(STRATA, 0.05).odds
    assert odds is not None
    assert (odds.low, odds.high) == pytest.approx(UCB["computed"]["ci95"], rel=1e-9)


def test_the_statistic_without_correction_has_the_p_of_chi_square() -> None:
    found = mantel_haenszel(STRATA, 0.05, corrected=False)
    assert found.chi_square == pytest.approx(UCB["computed"]["X2_no_cc"])
    assert found.p == pytest.approx(chi2.sf(found.chi_square, 1))


def test_strata_that_tell_nothing_do_not_weigh() -> None:
    silent = [Table(3, 0, 4, 0), Table(0, 0, 5, 2), Table(0, 0, 0, 0)]
    assert mantel_haenszel([*STRATA, *silent], 0.05) == mantel_haenszel(STRATA, 0.05)
    assert mantel_haenszel(silent, 0.05) == Pooled(None, 0.0, 1.0, 0)


def test_what_comes_nearer_than_half_a_lot_to_what_is_expected_has_a_p_of_one() -> None:
    for table in (Table(2, 2, 2, 2), Table(3, 2, 2, 2)):
        found = mantel_haenszel([table], 0.05)
        assert (found.chi_square, found.p) == (0, 1)


def test_a_clean_split_has_no_end_above() -> None:
    odds = mantel_haenszel([Table(3, 0, 0, 3), Table(2, 0, 0, 2)], 0.05).odds
    assert odds == Odds(inf, 0.0, inf)
    assert mantel_haenszel([Table(0, 3, 3, 0)], 0.05).odds == Odds(0.0, 0.0, inf)
