"""A look falls inside of what was foretold of it, or outside, by its reading before its word."""

import pytest

from ledger.domain.entries import Foretold, Look
from ledger.domain.entries.choices import Grade, LookedAt
from ledger.service.glass.scores import Held, Score, _held, _score
from tests.domain.builders import make

BAND = Foretold("orange", neat_low_milli=4_000, neat_high_milli=9_000)
"""Between 4 and 9 NTU neat, of which 6 is the middle."""


def look(grade: Grade, ntu_milli: int | None = None, at: LookedAt = LookedAt.NEAT) -> Look:
    return make(Look, grade=grade, ntu_milli=ntu_milli, looked_at=at)


@pytest.mark.parametrize(
    ("grade", "low", "high", "is_inside"),
    [
        (Grade.BRIGHT, 0, 1, True),
        (Grade.BRIGHT, 1_000, 2_000, True),
        (Grade.BRIGHT, 1_001, 2_000, False),
        (Grade.CLEAR, 0, 1, True),
        (Grade.CLEAR, 3_001, 9_000, False),
        (Grade.HAZY, 0, 2_999, False),
        (Grade.HAZY, 0, 3_000, True),
        (Grade.HAZY, 6_001, 7_000, False),
        (Grade.OPALESCENT, 18_000, 90_000, True),
        (Grade.OPALESCENT, 0, 5_999, False),
        (Grade.CLOUDY, 0, 18_000, True),
        (Grade.CLOUDY, 30_001, 90_000, False),
        (Grade.MILKY, 0, 29_999, False),
        (Grade.MILKY, 900_000, 990_000, True),
    ],
)
def test_a_word_falls_inside_where_what_it_comes_to_meets_the_band(
    grade: Grade, low: int, high: int, is_inside: bool
) -> None:
    told = Foretold("orange", neat_low_milli=low, neat_high_milli=high)
    assert _held(told, look(grade), "E-1", 7) == Held("E-1", 7, "orange", None, is_inside)


@pytest.mark.parametrize(
    ("milli", "is_inside", "ratio"),
    [
        (3_999, False, 3.999 / 6),
        (4_000, True, 4 / 6),
        (9_000, True, 1.5),
        (9_001, False, 9.001 / 6),
        (0, False, None),
    ],
)
def test_a_reading_counts_before_the_word_and_is_held_to_the_middle_of_the_band(
    milli: int, is_inside: bool, ratio: float | None
) -> None:
    """Of nothing read there is no share of the middle, nor of a band that begins at nought."""
    found = _held(BAND, look(Grade.MILKY, milli), "E-1", 7)
    assert found
    assert (found.is_inside, found.ratio) == (is_inside, ratio and pytest.approx(ratio))
    open_end = Foretold("orange", neat_low_milli=0, neat_high_milli=9_000)
    found = _held(open_end, look(Grade.MILKY, milli), "E-1", 7)
    assert found
    assert (found.is_inside, found.ratio) == (milli <= 9_000, None)


def test_a_look_of_what_no_band_was_foretold_for_says_nothing() -> None:
    assert _held(BAND, look(Grade.CLEAR, at=LookedAt.AS_POURED), "E-1", 7) is None


def test_a_score_is_how_many_of_how_many_fell_inside() -> None:
    inside, outside = Held("E-1", 7, "orange", None, True), Held("E-1", 8, "orange", None, False)
    assert _score("orange", [inside, outside, inside]) == Score("orange", 2, 3)
    assert _score(None, []) == Score(None, 0, 0)
