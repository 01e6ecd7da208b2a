"""Time until haze, of looks that only say between which of them it came.

Guarantees: the estimate of Turnbull, which has no more to say than the looks do: how much of the
lots turned within each interval; when within it, nobody saw. Lots that were still good at their
last look count as long as they were seen. Refuses: an estimate of too few.

References:
    Turnbull, The empirical distribution function with arbitrarily grouped, censored and truncated
    data, J. R. Statist. Soc. B 38 (1976) 290 (from memory).
"""

import itertools
from collections.abc import Sequence
from math import inf

from msgspec import Struct

FEWEST = 5
"""No estimate where fewer turned (common practice, no source)."""
CLOSE = 1e-10
"""A change of all shares below this ends the reckoning."""
MOST_ROUNDS = 20_000
"""No reckoning is longer."""


class Span(Struct, frozen=True):
    """When one lot turned: after the last good look, by the first bad one."""

    after: float
    """Age at the last good look; 0 where there was none."""
    by: float
    """Age at the first bad look; infinite where there was none."""


class Part(Struct, frozen=True):
    """An interval in which some of the lots turned."""

    after: float
    """Its beginning, which is not of it."""
    by: float
    """Its end; may be infinite."""
    share: float
    """The share of all lots that turned in it."""


def turned(spans: Sequence[Span]) -> tuple[Part, ...]:
    """Return the intervals in which lots turned, with the share of each; empty of too few."""
    if sum(span.by < inf for span in spans) < FEWEST:
        return ()
    ends = _innermost(spans)
    inside = [
        [place for place, (after, by) in enumerate(ends) if span.after <= after and by <= span.by]
        for span in spans
    ]
    shares = [1 / len(ends)] * len(ends)
    for _ in range(MOST_ROUNDS):
        new = [0.0] * len(ends)
        for places in inside:
            whole = sum(shares[place] for place in places)
            for place in places:
                new[place] += shares[place] / whole / len(spans)
        moved = max(abs(one - other) for one, other in zip(shares, new, strict=True))
        shares = new
        if moved < CLOSE:
            break
    return tuple(
        Part(after, by, share)
        for (after, by), share in zip(ends, shares, strict=True)
        if share > CLOSE**0.5
    )


def _innermost(spans: Sequence[Span]) -> list[tuple[float, float]]:
    """Return the intervals from a beginning to an end with neither between them."""
    marks = sorted({(span.by, 0) for span in spans} | {(span.after, 1) for span in spans})
    return [
        (before, after)
        for (before, is_start), (after, starts) in itertools.pairwise(marks)
        if is_start and not starts
    ]
