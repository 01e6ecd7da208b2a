"""Telling apart what went together in the products that failed, by products that did not.

Guarantees: something is set apart only when enough clear batches of other products had it too, and
never all that went together; what remains is a lead, and no cause is named by it. Refuses: to
acquit for good; another product may bear it better.
"""

from collections.abc import Sequence
from fractions import Fraction

from msgspec.structs import replace

from ledger.science.statistics.association import fisher
from ledger.science.statistics.exact import Table
from ledger.science.statistics.suspects import Cause, Observed, SetApart, Sort, Suspect

LESS_LIKELY = Fraction(1, 10)
"""How small the exact p must be to set something apart."""


def set_apart(suspect: Suspect, elsewhere: Sequence[Observed]) -> Suspect:
    """Return a suspect without what other products had too and yet were clear.

    Args:
        suspect: Things that went together in every lot of the products that failed.
        elsewhere: Clear lots of other products.
    """
    apart = {
        cause: SetApart(cause, clear, p)
        for cause in suspect.causes
        if (clear := len({run.batch or run.lot for run in elsewhere if has(run, cause)}))
        and (p := _p(suspect.units, clear)) <= LESS_LIKELY
    }
    left = tuple(cause for cause in suspect.causes if cause not in apart)
    if not left:
        return suspect
    return replace(
        suspect, cause=left[0], not_separable_from=left[1:], set_apart=tuple(apart.values())
    )


def has(run: Observed, cause: Cause) -> bool:
    """Return whether a lot had something."""
    if cause.sort is Sort.LOT:
        return cause.name in run.inputs
    return run.settings.get(cause.name) == cause.level


def _p(here: Table, clear_elsewhere: int) -> Fraction:
    return fisher(Table(here.failed_with, 0, here.clear_with, clear_elsewhere))
