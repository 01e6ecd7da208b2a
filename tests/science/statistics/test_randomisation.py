"""A trial is judged by the draw of its plan: exactly, and an innocent is not named."""

from collections.abc import Sequence
from fractions import Fraction
from itertools import permutations, product
from random import Random

import pytest
from scipy import stats

from ledger.science.statistics.designs import Row, design, evenings
from ledger.science.statistics.randomisation import (
    Shown,
    TriedJar,
    doubled_ranks,
    least_p,
    p_of_draw,
    tried,
)
from ledger.science.statistics.suspects import LEVEL


def jars(rows: Sequence[Row], scores: Sequence[int | None], size: int = 8) -> list[TriedJar]:
    return [
        TriedJar(place // size, row, None if score is None else Fraction(score))
        for place, (row, score) in enumerate(zip(rows, scores, strict=True))
    ]


@pytest.mark.parametrize("table", [(4, 0, 0, 4), (3, 1, 1, 3), (6, 2, 1, 7), (5, 5, 2, 9)])
def test_of_clear_and_cloudy_it_is_fishers_exact_test_of_one_side(
    table: tuple[int, int, int, int],
) -> None:
    """Scipy's fisher_exact is the oracle."""
    with_bad, with_clear, without_bad, without_clear = table
    stratum = [(True, Fraction(1))] * with_bad + [(True, Fraction(0))] * with_clear
    stratum += [(False, Fraction(1))] * without_bad + [(False, Fraction(0))] * without_clear
    oracle = stats.fisher_exact([table[:2], table[2:]], alternative="greater").pvalue
    assert float(p_of_draw([stratum])) == pytest.approx(oracle)


def test_of_figures_without_ties_it_is_the_exact_rank_sum_test() -> None:
    """Scipy's mannwhitneyu, method exact, is the oracle."""
    random = Random(7)
    for _ in range(20):
        one = [random.gauss(0.7, 1) for _ in range(6)]
        other = [random.gauss(0, 1) for _ in range(5)]
        stratum = [(True, Fraction(value)) for value in one]
        stratum += [(False, Fraction(value)) for value in other]
        oracle = stats.mannwhitneyu(one, other, alternative="greater", method="exact").pvalue
        assert float(p_of_draw([stratum])) == pytest.approx(oracle)


def test_in_two_evenings_it_counts_every_way_of_sharing_out_the_jars_of_each() -> None:
    """Counted out by brute force, ties and all."""
    first = [(True, 3), (False, 1), (True, 1), (False, 2)]
    second = [(False, 1), (True, 2), (False, 2), (True, 5)]
    strata = [[(has, Fraction(score)) for has, score in part] for part in (first, second)]
    sums = []
    for one, other in product(set(permutations(h for h, _ in first)), repeat=2):
        total = 0
        for had, part in ((one, strata[0]), (other, strata[1])):
            ranks = doubled_ranks([score for _, score in part])
            total += sum(rank for has, rank in zip(had, ranks, strict=True) if has)
        sums.append(total)
    seen = 0
    for part in strata:
        ranks = doubled_ranks([score for _, score in part])
        seen += sum(rank for (has, _), rank in zip(part, ranks, strict=True) if has)
    p, least = p_of_draw(strata), least_p(strata)
    assert p == Fraction(sum(total >= seen for total in sums), len(sums))
    assert least == Fraction(1, len(sums))


def test_the_cause_of_three_is_shown_and_the_others_are_not() -> None:
    rows = design(3, 4)
    found = tried(jars(rows, [row[1] for row in rows]), 3, LEVEL)
    assert [item.shown for item in found] == [Shown.NONE, Shown.CAUSE, Shown.NONE]
    assert found[1].p == Fraction(1, 70**2)
    assert found[1].p_adjusted == Fraction(3, 70**2)
    for level, shown in ((Fraction(3, 70**2), Shown.CAUSE), (Fraction(2, 70**2), Shown.LEAD)):
        assert tried(jars(rows, [row[1] for row in rows]), 3, level)[1].shown is shown


def test_two_causes_are_both_shown() -> None:
    rows = design(2, 6)
    bad = [row[0] or row[1] for row in rows]
    found = tried(jars(rows, bad), 2, LEVEL)
    assert [item.shown for item in found] == [Shown.INSEPARABLE, Shown.INSEPARABLE]
    worse = [row[0] + 2 * row[1] for row in rows]
    found = tried(jars(rows, worse), 2, LEVEL)
    assert [item.shown for item in found] == [Shown.CAUSE, Shown.CAUSE]


def test_four_jars_that_could_not_decide_are_too_few() -> None:
    rows = design(2, 1)
    found = tried(jars(rows, [row[0] for row in rows]), 2, LEVEL)
    assert [item.shown for item in found] == [Shown.TOO_FEW, Shown.TOO_FEW]
    assert found[0].p == found[0].least_p == Fraction(1, 6)


def test_what_stands_out_alone_but_not_among_many_is_a_lead() -> None:
    rows = design(3, 2)
    scores = [int(row[0]) for row in rows]
    scores[next(place for place, row in enumerate(rows) if not row[0])] = 1
    found = tried(jars(rows, scores), 3, LEVEL)
    assert found[0].p == Fraction(1, 14)
    scores = [int(row[0]) for row in rows]
    assert tried(jars(rows, scores), 3, LEVEL)[0].shown is Shown.CAUSE
    assert tried(jars(rows, scores), 3, Fraction(1, 30))[0].shown is Shown.LEAD


def test_a_lost_jar_never_makes_an_accusation_easier() -> None:
    """Whatever it would have shown, p is no smaller (Barnard's convexity; from memory)."""
    random = Random(11)
    for _ in range(60):
        rows = design(2, 4)
        scores = [int(random.random() < (0.7 if row[0] else 0.2)) for row in rows]
        lost = random.randrange(len(rows))
        without: list[int | None] = [*scores]
        without[lost] = None
        if len({*scores[:lost], *scores[lost + 1 :]}) < 2:
            continue
        worst = tried(jars(rows, without), 2, Fraction(0))
        for score in (0, 1):
            scores[lost] = score
            known = tried(jars(rows, scores), 2, Fraction(0))
            assert all(one.p >= other.p for one, other in zip(worst, known, strict=True))


def test_where_nothing_is_a_cause_something_is_shown_in_no_more_than_the_level() -> None:
    """Every way to share out the jars of one evening, whatever they turned out to be."""
    rows = design(2, 2)
    ways = set(permutations(rows))
    shown = [tried(jars(drawn, [1, 1, 1, 1, 0, 0, 0, 0]), 2, LEVEL) for drawn in ways]
    named = sum(any(item.shown is Shown.CAUSE for item in found) for found in shown)
    assert 0 < Fraction(named, len(ways)) <= LEVEL


def test_beside_a_cause_an_innocent_is_seldom_shown() -> None:
    random = Random(3)
    shown = 0
    for _ in range(300):
        rows = design(3, 4)
        scores = [int(random.random() < (0.9 if row[0] else 0.1)) for row in rows]
        found = tried(jars(rows, scores, evenings(3, 4, 8)[0]), 3, LEVEL)
        shown += any(item.shown is Shown.CAUSE for item in found[1:])
    assert shown / 300 <= 0.05
