"""Telling apart what went together in the products that failed, by products that did not.

Guarantees: something is set apart only when enough clear lots of other products had it too, and
never all that went together. Refuses: to acquit for good; another product may bear it better.
"""

from collections.abc import Sequence
from fractions import Fraction

from msgspec.structs import replace

from ledger.science.statistics.association import fisher
from ledger.science.statistics.exact import Table
from ledger.science.statistics.suspects import Cause, Observed, SetApart, Sort, Suspect


def set_apart(suspect: Suspect, elsewhere: Sequence[Observed], level: Fraction) -> Suspect:
    """Return a suspect without what other products had too and yet were clear.

    Args:
        suspect: Things that went together in every lot of the products that failed.
        elsewhere: Clear lots of other products.
        level: How small the exact p must be to set something apart.
    """
    apart = {
        cause: SetApart(cause, clear, p)
        for cause in suspect.causes
        if (clear := sum(has(run, cause) for run in elsewhere))
        and (p := _p(suspect.table, clear)) <= level
    }
    left = tuple(cause for cause in suspect.causes if cause not in apart)
    if not left:
        return suspect
    return replace(
        suspect, cause=left[0], not_separable_from=left[1:], set_apart=tuple(apart.values())
    )


def has(run: Observed, cause: Cause) -> bool:
    """Return whether a lot had something, or lacked it when its absence is meant."""
    if cause.sort is Sort.LOT:
        return (cause.name in run.inputs) != cause.is_absent
    return (run.settings.get(cause.name) == cause.level) != cause.is_absent


def _p(here: Table, clear_elsewhere: int) -> Fraction:
    return fisher(Table(here.failed_with, 0, here.clear_with, clear_elsewhere))
