"""Whether a figure in doubt is below a limit, above it, or too close to tell.

Guarantees: the rule of guarded acceptance and guarded rejection with a guard band of the whole half
width (JCGM 106:2012, 8.3.2 and 8.3.3): a figure is *below* when all of its interval is on the side
that a limit lets be, *above* when all of it is past the limit; else nobody can tell with these
instruments. A figure without doubt decides by itself. Refuses: to call close a pass. Clauses
of JCGM 106 are from memory.
"""

from enum import StrEnum

from ledger.domain.masters.limits import HAIR, is_above, is_below

RULE = "guarded by the whole doubt on either side (JCGM 106:2012, 8.3), coverage factor 2"
"""The decision rule, in words."""


class Verdict(StrEnum):
    """On which side of a limit a figure is, for all its doubt."""

    BELOW = "below"
    ABOVE = "above"
    UNDECIDED = "undecided"


def verdict(figure: float, half_width: float, limit: float, *, at_limit: Verdict) -> Verdict:
    """Return on which side of a limit a figure is.

    Args:
        figure: The figure.
        half_width: Half the width of its interval, in the same unit.
        limit: The limit, in the same unit.
        at_limit: What a figure without doubt that is just at the limit counts as: `BELOW` where a
            limit is the most that may be, `ABOVE` where a marker is reached by it.

    >>> str(verdict(59.8, 0.4, 60, at_limit=Verdict.ABOVE))
    'undecided'
    >>> str(verdict(59.8, 0.1, 60, at_limit=Verdict.ABOVE)), str(verdict(0.6, 0.02, 0.5,
    ...     at_limit=Verdict.BELOW))
    ('below', 'above')
    """
    if half_width <= HAIR * abs(limit):
        if is_above(figure, limit):
            return Verdict.ABOVE
        return Verdict.BELOW if is_below(figure, limit) else at_limit
    if figure + half_width <= limit:
        return Verdict.BELOW
    return Verdict.ABOVE if figure - half_width >= limit else Verdict.UNDECIDED
