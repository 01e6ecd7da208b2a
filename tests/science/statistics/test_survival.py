"""Time until haze is estimated as the published example is."""

from math import inf

import pytest

from ledger.science.statistics.survival import Span, turned

TURNED = (
    (0, 7), (0, 8), (0, 5), (4, 11), (5, 12), (5, 11), (6, 10), (7, 16), (7, 14), (11, 15),
    (11, 18), (17, 25), (17, 25), (19, 35), (18, 26), (25, 37), (26, 40), (27, 34), (36, 44),
    (36, 48), (37, 44),
)  # fmt: skip
STILL_GOOD = (
    15, 17, 18, 22, 24, 24, 32, 33, 34, 36, 36, 37, 37, 37, 38, 40, 45,
    46, 46, 46, 46, 46, 46, 46, 46,
)  # fmt: skip
"""Months to retraction of 46 patients treated by radiation alone, which stand for lots here:
Finkelstein and Wolfe, Biometrics 41 (1985) 933 (from memory)."""
PUBLISHED = (
    (4, 5, 0.0463), (6, 7, 0.0334), (7, 8, 0.0887), (11, 12, 0.0708), (24, 25, 0.0926),
    (33, 34, 0.0818), (38, 40, 0.1209), (46, 48, 0.4656),
)  # fmt: skip
"""Turnbull's estimate of them as published since (from memory)."""


def test_the_estimate_of_forty_six_is_the_published_one() -> None:
    spans = [Span(after, by) for after, by in TURNED]
    spans += [Span(after, inf) for after in STILL_GOOD]
    found = turned(spans)
    assert [(part.after, part.by) for part in found] == [(after, by) for after, by, _ in PUBLISHED]
    assert [part.share for part in found] == pytest.approx(
        [share for _, _, share in PUBLISHED], abs=2e-4
    )


def test_exact_times_give_the_steps_of_everybody() -> None:
    found = turned([Span(float(day - 1), float(day)) for day in range(1, 6)])
    assert [part.share for part in found] == pytest.approx([0.2] * 5)


def test_of_four_that_turned_nothing_is_said() -> None:
    assert turned([Span(0, 1)] * 4 + [Span(1, inf)] * 20) == ()
