"""What every answer for machines is made of.

Guarantees: an answer is frozen and has the keys that its class names and no other, each of them
always there, null where there is nothing to tell; an amount is always a plain decimal and its
unit, a time always has its offset, no figure is a floating-point number.
"""

from datetime import datetime
from fractions import Fraction
from typing import Annotated

from msgspec import Meta, Struct

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import When
from reports.kit.amounts import UNITS, Unit, amount_in, decimal_amount

Figure = Annotated[str, Meta(pattern=r"^-?[0-9]+(\.[0-9]+)?$")]
"""A figure as a plain decimal in text."""
Moment = Annotated[str, Meta(extra_json_schema={"format": "date-time"})]
"""A time with its offset, ISO 8601: 2026-03-02T09:00:00+01:00."""
Code = Annotated[str, Meta(description="Code of a lot.")]
"""Code of a lot."""


class Answer(Struct, frozen=True, forbid_unknown_fields=True):
    """Base of every answer and of its parts."""


class Amount(Answer, frozen=True):
    """An amount with its unit."""

    amount: Figure
    """How much, a plain decimal."""
    unit: Unit
    """Its unit: millilitres, grams, or things counted."""


class Told(Answer, frozen=True):
    """Something that is said, and what to do about it."""

    what: str
    """What, a whole sentence."""
    what_to_do: str
    """What to do about it; empty where there is nothing."""


class File(Answer, frozen=True):
    """A file that was written."""

    path: str
    """Where it is."""


def amount_of(amount: int, measure: Measure) -> Amount:
    """Return an amount of the book's smallest unit.

    >>> amount_of(30_000, Measure.UL)
    Amount(amount='30', unit='mL')
    """
    return Amount(amount_in(amount, measure), UNITS[measure])


def amount_or_none(amount: int | None, measure: Measure) -> Amount | None:
    """Return an amount, or None where there is none.

    >>> amount_or_none(None, Measure.UL)
    """
    return None if amount is None else amount_of(amount, measure)


def moment(when: When) -> Moment:
    """Return a time by the clock that it was written by.

    >>> moment(When(datetime.fromisoformat("2026-03-02T08:00Z"), 60))
    '2026-03-02T09:00:00+01:00'
    """
    return when.local().isoformat()


def moment_of(at: datetime) -> Moment:
    """Return a time as it stands on its own clock.

    >>> moment_of(datetime.fromisoformat("2026-03-02T08:00Z"))
    '2026-03-02T08:00:00+00:00'
    """
    return at.isoformat()


def scaled_or_none(value: int | None, places: int) -> Figure | None:
    """Return a whole number of a smaller unit as a decimal, or None where there is none.

    >>> scaled_or_none(96_300, 3), scaled_or_none(None, 3)
    ('96.3', None)
    """
    return None if value is None else decimal_amount(value, places)


def rounded(value: float, places: int) -> Figure:
    """Return a figure with at most so many decimals and no idle zeros.

    >>> rounded(-4.5, 3), rounded(20.0, 3), rounded(-0.0001, 3)
    ('-4.5', '20', '0')
    """
    return decimal_amount(round(Fraction(f"{value:.{places}f}") * 10**places), places)


def told(pairs: tuple[tuple[str, str], ...]) -> tuple[Told, ...]:
    """Return what is said and what to do about it, of pairs of sentences.

    >>> told((("It is cloudy.", "Look again."),))
    (Told(what='It is cloudy.', what_to_do='Look again.'),)
    """
    return tuple(Told(what, todo) for what, todo in pairs)
