"""Failing dealt anew within strata: the chances are scipy's, the outcomes keep every total."""

from collections import Counter
from itertools import islice

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import hypergeom, nchypergeom_fisher

from ledger.science.statistics.permutation import SEED, outcomes, strata_of, symmetric, tails
from ledger.science.statistics.stream import uniform


@given(st.integers(2, 14), st.data())
def test_the_chance_of_a_count_or_more_is_what_scipy_says(units: int, data: st.DataObject) -> None:
    having = data.draw(st.integers(0, units))
    failures = data.draw(st.integers(1, units))
    odds = data.draw(st.sampled_from((1.0, 0.25, 3.5)))
    strata = strata_of([2**units - 1], 2**failures - 1)
    mask = 2**having - 1
    plain = tails(mask, strata, None)
    tilted = tails(mask, strata, [odds] * having + [1.0] * (units - having))
    for count in range(failures + 1):
        expected = hypergeom.sf(count - 1, units, having, failures)
        assert plain[count] == pytest.approx(expected, abs=1e-12)
        expected = nchypergeom_fisher.sf(count - 1, units, having, failures, odds)
        assert tilted[count] == pytest.approx(expected, abs=1e-7)


def test_few_outcomes_are_all_looked_at() -> None:
    strata = strata_of([0b00111, 0b11000], 0b01001)
    every = list(outcomes(strata, 0b01001, None, drawn=9))
    assert sorted(every) == sorted(1 << n | 1 << m for n in range(3) for m in (3, 4))


@pytest.mark.parametrize(("units", "told"), [(1000, 1000), (1001, 3)])
def test_up_to_a_thousand_outcomes_are_all_looked_at(units: int, told: int) -> None:
    strata = strata_of([2**units - 1], 1)
    assert len(list(outcomes(strata, 1, None, drawn=2))) == told


def test_of_many_a_fixed_sample_is_drawn_that_keeps_how_many_failed() -> None:
    masks, seen = [2**20 - 1, (2**20 - 1) << 20], 0b11111 | 0b111 << 20
    strata = strata_of(masks, seen)
    drawn = list(outcomes(strata, seen, None, drawn=200))
    assert drawn == list(outcomes(strata, seen, None, drawn=200))
    assert (drawn[0], len(drawn)) == (seen, 201)
    counts = {
        ((failed & masks[0]).bit_count(), (failed & masks[1]).bit_count()) for failed in drawn
    }
    assert counts == {(5, 3)}


def test_each_is_drawn_by_the_sums_of_all_ways_to_fail() -> None:
    """By the definition: from the last unit on, by its share of all ways to fail."""
    odds = [0.25, 1.0, 3.0, 0.5, 2.0, 1.5, 1.0, 4.0, 0.1, 1.0, 0.7, 2.5]
    (stratum,) = strata = strata_of([2**12 - 1], 0b10110001)
    shares, wanted = uniform(SEED), [0b10110001]
    for _ in range(300):
        left, bits = 4, 0
        for n in reversed(stratum.places):
            every = symmetric(odds[: n + 1], left)[left]
            if left and next(shares) * every < odds[n] * symmetric(odds[:n], left - 1)[left - 1]:
                bits, left = bits | 1 << n, left - 1
        wanted.append(bits)
    assert list(outcomes(strata, 0b10110001, odds, drawn=300)) == wanted


def test_what_has_greater_odds_is_drawn_more_often() -> None:
    """Of three units one fails, with odds 1, 2 and 5: in an eighth, a quarter and five eighths."""
    strata = strata_of([0b111], 0b001)
    seen = Counter(islice(outcomes(strata, 0b001, [1.0, 2.0, 5.0], drawn=4000), 1, None))
    shares = [seen[1 << place] / 4000 for place in range(3)]
    assert shares == pytest.approx([1 / 8, 2 / 8, 5 / 8], abs=0.03)


def test_symmetric_sums_by_hand() -> None:
    """(1 + x)(1 + 2x)(1 + 3x) = 1 + 6x + 11x² + 6x³."""
    assert symmetric([1.0, 2.0, 3.0], 3) == [1.0, 6.0, 11.0, 6.0]
