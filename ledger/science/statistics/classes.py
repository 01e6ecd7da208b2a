"""Figures in two classes, so that they can be counted.

Guarantees: the limit of a formula divides the lots when they lie on both sides of it, else their
median; which lots failed plays no part. Refuses: to guess a figure that was not recorded.
"""

from collections.abc import Mapping
from fractions import Fraction
from statistics import median_low

from ledger.science.ranges import significant

NOT_RECORDED = "not recorded"
"""The level of a lot whose figure nobody wrote down."""


def classed(
    figures: Mapping[str, Fraction | None],
    unit: str,
    limit: Fraction | None = None,
    *,
    is_least: bool = False,
) -> dict[str, str]:
    """Return the class of each lot's figure, in words.

    Args:
        figures: The figure of each lot; None where it was not recorded.
        unit: Its unit; may be empty.
        limit: The formula's limit; a figure at the limit is within it.
        is_least: Whether the limit is the least allowed; else it is the most.

    >>> classed({"a": Fraction(2), "b": Fraction(8), "c": Fraction(9)}, "°C", Fraction(8))
    {'a': 'up to 8 °C', 'b': 'up to 8 °C', 'c': 'above 8 °C'}
    >>> classed({"a": Fraction(24), "b": Fraction(48), "c": None}, "h")
    {'a': '24 h', 'b': '48 h', 'c': 'not recorded'}
    >>> classed({"a": Fraction(2), "b": Fraction(24)}, "h", Fraction(24), is_least=True)
    {'a': 'under 24 h', 'b': '24 h or more'}
    >>> figures = {"a": Fraction(2), "b": Fraction(4), "c": Fraction(8)}
    >>> classed(figures, "h", Fraction(6), is_least=True)
    {'a': 'under 6 h', 'b': 'under 6 h', 'c': '6 h or more'}
    """
    known = sorted(figure for figure in figures.values() if figure is not None)
    if limit is not None and known and is_least and known[0] < limit <= known[-1]:
        return {lot: _at_least(figure, limit, unit) for lot, figure in figures.items()}
    is_most = limit is not None and known and not is_least and known[0] <= limit < known[-1]
    edge = limit if is_most else _middle(known)
    return {lot: _up_to(figure, edge, unit) for lot, figure in figures.items()}


def _middle(known: list[Fraction]) -> Fraction | None:
    if len(set(known)) <= 2:
        return None
    # Where the median is the greatest figure, none would lie above it; the next below divides then.
    middle = median_low(known)
    below = [figure for figure in known if figure < known[-1]]
    return middle if middle < known[-1] else below[-1]


def _at_least(figure: Fraction | None, limit: Fraction, unit: str) -> str:
    if figure is None:
        return NOT_RECORDED
    return f"{_shown(limit, unit)} or more" if figure >= limit else f"under {_shown(limit, unit)}"


def _up_to(figure: Fraction | None, edge: Fraction | None, unit: str) -> str:
    if figure is None:
        return NOT_RECORDED
    if edge is None:
        return _shown(figure, unit)
    return f"{'above' if figure > edge else 'up to'} {_shown(edge, unit)}"


def _shown(figure: Fraction, unit: str) -> str:
    number = significant(float(figure), is_whole_kept=True).replace("-", "−")
    return f"{number} {unit}".strip()
