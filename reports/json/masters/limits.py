"""Limits, for machines."""

from datetime import date

from msgspec.structs import asdict

from ledger.domain.entries import Limit
from ledger.domain.entries.choices import Bound, KnownBy, LimitBasis, LimitUnit
from ledger.domain.masters.limits import Holds, ListedLimit
from reports.json.kit.answer import Answer, Figure
from reports.kit.amounts import decimal_amount


class LimitTold(Answer, frozen=True):
    """A limit or a marker of some place, with its source."""

    limit: str
    """Its code."""
    substance: str
    """What is limited: a substance by its common name, or alcohol, sugar."""
    bound: Bound
    """Which side of the value is the matter."""
    value: Figure
    """The value."""
    unit: LimitUnit
    """Its unit."""
    basis: LimitBasis
    """What it counts in."""
    place: str
    """Where it holds: a country's code, EU, or everywhere."""
    says: str | None
    """What it means in words."""
    citation: str
    """Where it is written."""
    known_by: KnownBy
    """Whether the value was read there or recalled."""
    since: date | None
    """From which day it holds."""
    until: date | None
    """The last day it holds."""


class LimitAnswer(LimitTold, frozen=True):
    """A limit as it is listed today."""

    holds: Holds
    """Where it stands today."""
    to_come: LimitTold | None
    """What takes its place on a later day."""


def limit_told(limit: Limit) -> LimitTold:
    """Return a limit."""
    return LimitTold(
        limit=limit.code,
        substance=limit.substance,
        bound=limit.bound,
        value=decimal_amount(limit.value_micro, 6),
        unit=limit.unit,
        basis=limit.basis,
        place=limit.place,
        says=limit.says,
        citation=limit.citation,
        known_by=limit.known_by,
        since=limit.since,
        until=limit.until,
    )


def limit_answer(listed: ListedLimit) -> LimitAnswer:
    """Return a limit, with where it stands and what is to come in its place."""
    to_come = limit_told(listed.to_come) if listed.to_come else None
    return LimitAnswer(**asdict(limit_told(listed.limit)), holds=listed.holds, to_come=to_come)
