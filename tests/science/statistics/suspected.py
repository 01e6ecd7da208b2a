"""Lots as they were observed, and a suspect, for tests of what is made of them."""

from fractions import Fraction

from ledger.science.statistics.exact import Table
from ledger.science.statistics.suspects import Cause, Level, Observed, Sort, Suspect

OIL = Cause(Sort.LOT, "OIL-1")


def observed(lot: str, batch: str, *inputs: str, is_failed: bool = False) -> Observed:
    return Observed(lot, is_failed, frozenset(inputs), {}, "syrup", "AB", batch)


def suspect(cause: Cause = OIL, table: Table | None = None) -> Suspect:
    """Return a suspect of which the test looks at nothing but its cause and its table."""
    counts = table or Table(2, 0, 0, 2)
    return Suspect(cause, (), Level.BATCH, counts, counts, (("", counts),), Fraction(1), None)
