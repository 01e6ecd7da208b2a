"""Limits: which version of one counts on a day, and on which side of it a figure is.

Guarantees: of all that was said of a limit the latest that has begun counts, so a value that is to
come leaves the one before in force until its day. A figure decides as it was reckoned, not rounded;
a hair that is the rounding of the sums themselves is nothing. Refuses: to choose between limits.
"""

from collections.abc import Iterable, Sequence
from datetime import date
from enum import StrEnum

from msgspec import Struct

from ledger.domain.entries import Limit
from ledger.domain.entries.choices import Bound

HAIR = 1e-9
"""Share of a limit within which a figure is just at it: sums of floating numbers are no nearer."""


class Holds(StrEnum):
    """Where a limit stands on a day."""

    NOW = "in force"
    TO_COME = "to come"
    PAST = "past"


def holds_on(limit: Limit, on: date) -> Holds:
    """Return where a limit stands on a day; its first and its last day are of its time."""
    if limit.since is not None and on < limit.since:
        return Holds.TO_COME
    if limit.until is not None and on > limit.until:
        return Holds.PAST
    return Holds.NOW


def counting_on(versions: Sequence[Limit], on: date) -> Limit:
    """Return which version of a limit counts on a day, in force or not.

    Args:
        versions: What was said of it, the latest last; at least one.
        on: The day.
    """
    begun = [version for version in versions if holds_on(version, on) is not Holds.TO_COME]
    return (begun or versions)[-1]


def in_force_on(versions: Iterable[Sequence[Limit]], on: date) -> tuple[Limit, ...]:
    """Return the limits in force on a day, of several limits with what was said of each."""
    counting = (counting_on(said, on) for said in versions)
    return tuple(limit for limit in counting if holds_on(limit, on) is Holds.NOW)


class ListedLimit(Struct, frozen=True):
    """A limit as it is listed on a day."""

    limit: Limit
    """The version that counts on the day."""
    holds: Holds
    """Where it stands on the day."""
    to_come: Limit | None = None
    """What was said of it last, when that takes its place on a later day."""


def listed_on(said: Sequence[Limit], on: date) -> ListedLimit:
    """Return a limit as it is listed on a day; of what was said of it the latest stands last."""
    counts, last = counting_on(said, on), said[-1]
    is_waiting = last is not counts and holds_on(last, on) is Holds.TO_COME
    return ListedLimit(counts, holds_on(counts, on), last if is_waiting else None)


def is_passed(figure: float, limit: Limit) -> bool:
    """Return whether a figure is past a limit that forbids, or has reached one that marks.

    At most and less than forbid what is above (or at) the value; from and above mark it.
    """
    value = limit.value_micro / 1_000_000
    if limit.bound in (Bound.AT_MOST, Bound.ABOVE):
        return is_above(figure, value)
    return not is_below(figure, value)


def is_above(figure: float, limit: float) -> bool:
    """Return whether a figure is above a limit by more than a hair.

    >>> is_above(0.3, 0.1 + 0.1 + 0.1), is_above(0.50001, 0.5), is_above(1e-12, 0)
    (False, True, True)
    """
    return figure > limit * (1 + HAIR)


def is_below(figure: float, limit: float) -> bool:
    """Return whether a figure is below a limit by more than a hair."""
    return figure < limit * (1 - HAIR)
