"""Plots of a trial: where each batch stands along a line, by factor and level.

Guarantees: all batches of a response share one line, so rows can be compared; confounded factors
have no plot. Refuses: to draw; renderings do.
"""

from collections.abc import Callable, Sequence
from fractions import Fraction

from ledger.science.ranges import significant
from ledger.science.statistics.trials import Factor, Jar
from ledger.service.causes.compare import GRADES, Comparison
from reports.views.causes import PlotRow, PlotView

WIDTH = 41
"""Places along the line of a plot in text."""
YIELD = "yield %"
"""What came out of the liquids put in."""
DOT, DOT_PLAIN = "●", "o"
"""A batch on a screen, and where only plain letters are sure to show."""
LIMIT = "|"
"""Where a limit or the mean stands."""


def plots_of(comparison: Comparison) -> tuple[PlotView, ...]:
    """Return the plots of a trial: clarity against loss, then each response by each factor.

    A factor that moved together with something has no plot.
    """
    by_factor = (
        plot
        for factor in comparison.factors
        if not factor.moved_with
        for plot in (
            _grades(factor, comparison),
            _numbers("NTU", factor.name, _groups(factor, comparison), lambda jar: jar.ntu),
            _numbers(YIELD, factor.name, _groups(factor, comparison), lambda jar: jar.yield_pct),
        )
    )
    against = _numbers(YIELD, "last look", _by_look(comparison), lambda jar: jar.yield_pct)
    return tuple(plot for plot in (against, *by_factor) if plot)


def _by_look(comparison: Comparison) -> list[tuple[str, Sequence[Jar]]]:
    return [
        (str(grade), jars)
        for rank, grade in enumerate(GRADES)
        if (jars := [jar for jar in comparison.jars if jar.last_grade == rank])
    ]


def _groups(factor: Factor, comparison: Comparison) -> list[tuple[str, Sequence[Jar]]]:
    controls = [jar for jar in comparison.jars if jar.is_control]
    return [*factor.levels, *([("control", controls)] if controls else [])]


def _grades(factor: Factor, comparison: Comparison) -> PlotView | None:
    groups = _groups(factor, comparison)
    if not any(jar.grades for _, jars in groups for jar in jars):
        return None
    last = len(GRADES) - 1
    return PlotView(
        f"last look by {factor.name}",
        str(GRADES[0]),
        str(GRADES[-1]),
        tuple(
            PlotRow(
                label,
                tuple(jar.last_grade / last for jar in jars if jar.last_grade is not None),
            )
            for label, jars in groups
        ),
    )


def _numbers(
    what: str,
    by: str,
    groups: Sequence[tuple[str, Sequence[Jar]]],
    of: Callable[[Jar], Fraction | None],
) -> PlotView | None:
    known = [value for _, jars in groups for jar in jars if (value := of(jar)) is not None]
    if not known:
        return None
    low, high = min(known), max(known)

    def place(value: Fraction) -> float:
        return float((value - low) / (high - low)) if high > low else 0.5

    rows = (
        PlotRow(label, tuple(place(value) for jar in jars if (value := of(jar)) is not None))
        for label, jars in groups
    )
    return PlotView(f"{what} by {by}", _end(low), _end(high), tuple(rows))


def _end(figure: Fraction) -> str:
    return significant(float(figure), is_whole_kept=True)


def plot_lines(plot: PlotView, *, is_plain: bool) -> list[str]:
    """Return a plot in text; batches at one place are counted.

    >>> plot = PlotView("NTU by rest", "1", "9", (PlotRow("24h", (0.0, 0.0, 1.0)),))
    >>> for line in plot_lines(plot, is_plain=True): print(line)
    NTU by rest
      24h  2.......................................o
           1                                       9
    """
    room = max(len(row.label) for row in plot.rows)
    lines = [plot.title]
    lines += [
        f"  {row.label:<{room}}  {_line(row, plot.limits, is_plain=is_plain)}" for row in plot.rows
    ]
    gap = WIDTH - len(plot.left) - len(plot.right)
    return [*lines, f"  {'':<{room}}  {plot.left}{' ' * gap}{plot.right}"]


def _line(row: PlotRow, limits: Sequence[float], *, is_plain: bool) -> str:
    cells = [0] * WIDTH
    for place in row.places:
        cells[_cell(place)] += 1
    dot, rule = (DOT_PLAIN, ".") if is_plain else (DOT, "·")
    lined = {_cell(place) for place in limits}
    return "".join(
        # A place has room for one figure.
        (LIMIT if place in lined else rule)
        if not count
        else dot
        if count == 1
        else str(min(count, 9))
        for place, count in enumerate(cells)
    )


def _cell(place: float) -> int:
    return round(place * (WIDTH - 1))
