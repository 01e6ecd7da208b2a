"""Limits in time: which version of a limit counts on a day, and whether it is in force.

Guarantees: of all that was said of a limit the latest that has begun counts, so a value that is to
come leaves the one before in force until its day. Refuses: to choose between limits.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from ledger.domain.entries import Limit


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
    begun = [item for item in versions if holds_on(item, on) is not Holds.TO_COME]
    return (begun or versions)[-1]


def in_force_on(versions: Iterable[Sequence[Limit]], on: date) -> tuple[Limit, ...]:
    """Return the limits in force on a day, of several limits with what was said of each."""
    counting = (counting_on(said, on) for said in versions)
    return tuple(item for item in counting if holds_on(item, on) is Holds.NOW)


@dataclass(frozen=True, slots=True)
class ListedLimit:
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
