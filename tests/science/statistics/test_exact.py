"""The exact test agrees with published examples and with scipy."""

import json
from fractions import Fraction
from itertools import product
from math import comb, inf

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import fisher_exact
from scipy.stats.contingency import odds_ratio

from ledger.science.statistics.association import exact_odds, fisher
from ledger.science.statistics.exact import (
    EXACT_MOST,
    Table,
    counts_of,
    least_one_sided,
    likeliest_odds,
    odds_interval,
    one_sided,
    two_sided,
)
from tests.science.published import REFERENCE

EXAMPLES = json.loads((REFERENCE / "stats_examples.json").read_text(encoding="utf-8"))
CELLS = st.integers(0, 12)
TABLES = st.builds(Table, CELLS, CELLS, CELLS, CELLS)


def test_the_lady_tasting_tea() -> None:
    """R, fisher.test example; Agresti 1990 p. 61, 2002 p. 91: p = 0.2429, one-sided."""
    told = EXAMPLES["fisher_tea_tasting"]
    (a, b), (c, d) = told["table"]
    counts = counts_of([Table(a, b, c, d)])
    assert one_sided(counts) == Fraction(told["exact"])
    assert round(float(one_sided(counts)), 4) == told["published_p"]
    assert two_sided(counts) == Fraction(34, 70)


def test_the_odds_of_the_lady_tasting_tea() -> None:
    """R prints 6.408309, to the tolerance of its root (from memory)."""
    assert exact_odds([Table(3, 1, 1, 3)], 0.05).ratio == pytest.approx(6.408309, rel=1e-5)


@given(TABLES)
def test_p_is_what_scipy_says(table: Table) -> None:
    rows = [
        [table.failed_with, table.failed_without],
        [table.clear_with, table.clear_without],
    ]
    assert float(fisher(table)) == pytest.approx(fisher_exact(rows).pvalue, rel=1e-9)


@given(TABLES.filter(lambda table: table.is_telling))
def test_odds_and_interval_are_what_scipy_says(table: Table) -> None:
    result = odds_ratio(
        [[table.failed_with, table.failed_without], [table.clear_with, table.clear_without]]
    )
    low, high = result.confidence_interval(0.95)
    counts = counts_of([table])
    assert likeliest_odds(counts) == pytest.approx(result.statistic, rel=1e-6, abs=1e-9)
    assert odds_interval(counts) == pytest.approx((low, high), rel=1e-6, abs=1e-9)


@pytest.mark.parametrize(
    "cells", [(1200, 800, 1100, 900), (30, 9970, 10, 9990), (700, 300, 1500, 900)]
)
def test_above_whole_numbers_p_is_still_what_scipy_says(cells: tuple[int, int, int, int]) -> None:
    table = Table(*cells)
    assert table.lots > EXACT_MOST
    expected = fisher_exact([cells[:2], cells[2:]]).pvalue
    assert float(fisher(table)) == pytest.approx(expected, rel=1e-8)


@given(st.lists(st.builds(Table, *[st.integers(0, 3)] * 4), min_size=1, max_size=3))
def test_several_tables_are_one_distribution(tables: list[Table]) -> None:
    """Every way to choose the lots with the suspect, table by table, counted one by one."""
    ways: dict[int, int] = {}
    ranges = [range(table.with_it + 1) for table in tables]
    for counts in product(*ranges):
        weight = 1
        for table, count in zip(tables, counts, strict=True):
            weight *= comb(table.failed, count) * comb(table.clear, table.with_it - count)
        ways[sum(counts)] = ways.get(sum(counts), 0) + weight
    seen = ways[sum(table.failed_with for table in tables)]
    whole = Fraction(sum(ways.values()))
    found = counts_of(tables)
    assert two_sided(found) == sum(way for way in ways.values() if way <= seen) / whole
    assert {
        found.least + place: way for place, way in enumerate(found.weights)
    } == {count: way for count, way in ways.items() if way}  # fmt: skip


@given(TABLES)
def test_one_sided_p_is_what_scipy_says(table: Table) -> None:
    expected = fisher_exact(
        [[table.failed_with, table.failed_without], [table.clear_with, table.clear_without]],
        alternative="greater",
    ).pvalue
    assert float(one_sided(counts_of([table]))) == pytest.approx(expected, rel=1e-9)


@given(TABLES)
def test_no_outcome_has_a_smaller_p_than_the_least(table: Table) -> None:
    first = max(0, table.with_it - table.clear)
    last = min(table.failed, table.with_it)
    possible = [
        Table(n, table.failed - n, table.with_it - n, table.clear - table.with_it + n)
        for n in range(first, last + 1)
    ]
    least = least_one_sided(counts_of([table]))
    assert least == min(one_sided(counts_of([item])) for item in possible)


def test_eleven_matched_pairs_reach_no_less_than_once_in_2048() -> None:
    """COMMIT, Am. J. Public Health 85 (1995) 183: communities were dealt in eleven pairs."""
    pairs = counts_of([Table(1, 0, 0, 1)] * 11)
    assert one_sided(pairs) == least_one_sided(pairs) == Fraction(1, 2048)


def test_a_clean_split_has_no_upper_end() -> None:
    counts = counts_of([Table(5, 0, 0, 4)])
    assert (likeliest_odds(counts), odds_interval(counts)[1]) == (inf, inf)
    assert two_sided(counts) == Fraction(1, 126)


def test_the_other_way_round_has_no_lower_end() -> None:
    counts = counts_of([Table(0, 5, 4, 0)])
    assert (likeliest_odds(counts), odds_interval(counts)[0]) == (0.0, 0.0)


def test_a_count_below_zero_is_refused() -> None:
    with pytest.raises(ValueError, match=r"A count is never below zero\."):
        Table(-1, 0, 0, 0)
