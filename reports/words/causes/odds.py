"""Suspects in words: what they are, and how sure one can be.

Guarantees: every count said can be checked by hand; chance is told as one in so many. Refuses: to
claim a cause where the evidence shows none.
"""

from collections.abc import Iterable, Mapping
from fractions import Fraction
from math import isinf

from ledger.domain.lots.lot import Lot
from ledger.science.ranges import significant
from ledger.science.statistics.association import Odds
from ledger.science.statistics.suspects import Cause, Level, Sort, Suspect

Lots = Mapping[str, Lot]
"""What lots are, by their codes."""

UNITS = {
    Level.BATCH: ("batch of essence", "batches of essence"),
    Level.BASE: ("base", "bases"),
    Level.RUN: ("lot", "lots"),
}
"""What is counted at each level."""


def cause_words(cause: Cause, lots: Lots) -> str:
    """Return what a suspect is: a lot with its name, a setting with its level, or a time.

    >>> cause_words(Cause(Sort.TIME, "begun", "from 2026-03-02"), {})
    'begun from 2026-03-02'
    """
    if cause.sort is Sort.LOT:
        brief = lots.get(cause.name)
        return f"{cause.name} {brief.name}" if brief else cause.name
    return f"{cause.name} {cause.level}"


def supplied(cause: Cause, lots: Lots) -> str:
    """Return a suspect with who supplied it and the supplier's lot."""
    brief = lots.get(cause.name) if cause.sort is Sort.LOT else None
    parts = (
        brief.supplier if brief else None,
        f"their lot {brief.supplier_lot}" if brief and brief.supplier_lot else None,
    )
    told = ", ".join(part for part in parts if part)
    return f"{cause_words(cause, lots)} ({told})" if told else cause_words(cause, lots)


def listed(words: Iterable[str]) -> str:
    """Return words as people list them.

    >>> listed(["a"]), listed(["a", "b", "c"])
    ('a', 'a, b and c')
    """
    *most, last = words
    return f"{', '.join(most)} and {last}" if most else last


def chance(p: Fraction) -> str:
    """Return how often chance alone does so much.

    >>> chance(Fraction(1, 126)), chance(Fraction(2, 3))
    ('once in 126 times', '2 times in 3')
    """
    if p * 2 > 1:
        return f"{round(p * 3)} times in 3" if p < 1 else "always"
    return f"once in {round(1 / p)} times"


def p_words(p: Fraction | float | None) -> str:
    """Return a p in two significant figures; a dash where there is none.

    >>> p_words(Fraction(1, 126)), p_words(Fraction(1, 10**6)), p_words(None)
    ('0.0079', '<0.0001', '–')
    >>> p_words(0.0001), p_words(0.00015), p_words(0.000099)
    ('0.0001', '0.00015', '<0.0001')
    """
    if p is None:
        return "–"
    return "<0.0001" if p < 0.0001 else f"{float(p):.2g}"


def odds_words(odds: Odds, percent: str) -> str:
    """Return an odds ratio with its interval, if that says anything.

    >>> odds_words(Odds(float("inf"), 2.51, float("inf")), "95 %")
    'without end (95 % interval from 2.5 up)'
    """
    ratio = "without end" if isinf(odds.ratio) else figure(odds.ratio)
    if isinf(odds.high) and not odds.low:
        return ratio
    if isinf(odds.high):
        reach = f"from {figure(odds.low)} up"
    else:
        reach = f"{figure(odds.low)} to {figure(odds.high)}"
    return f"{ratio} ({percent} interval {reach})"


def figure(value: float) -> str:
    """Return a figure in two or three digits.

    >>> figure(25.04), figure(0.3333), figure(1234.5)
    ('25', '0.33', '1234')
    """
    return significant(value, 2, is_whole_kept=True)


def counted(number: int, level: Level) -> str:
    """Return a number of what is counted at a level.

    >>> counted(2, Level.BATCH), counted(1, Level.RUN)
    ('2 batches of essence', '1 lot')
    """
    one, many = UNITS[level]
    return f"{number} {one if number == 1 else many}"


def counts_words(suspect: Suspect) -> str:
    """Return in how many failed and clear units of its level a suspect was."""
    units = suspect.units
    return (
        f"in {units.failed_with} of the {counted(units.failed, suspect.level)} that failed and in "
        f"{units.clear_with} of the {units.clear} that stayed clear"
    )


def decimal(value: Fraction | float | None) -> str | None:
    """Return a figure for machines: a decimal in six digits; None where there is no end to it.

    >>> decimal(Fraction(1, 126)), decimal(Fraction(1, 10**8)), decimal(float("inf"))
    ('0.00793651', '0.00000001', None)
    """
    return None if value is None or isinf(value) else significant(float(value), 6)
