"""The report: survivors with their change, and the scores by area and by kind of change.

Guarantees: a score is the share of killed mutants among those that were tried; what is broken or
equivalent counts for nothing and is told. An interval is Wilson's of 95 %. A mutant that no test
runs is a survivor.
"""

import math
from collections.abc import Callable, Iterable, Sequence

from tests.mutants.telling.areas import NAMES, area_of
from tests.mutants.trying.running import Outcome

HEAD = ("", "mutants", "killed", "survived", "unrun", "equivalent", "broken", "score", "95 %")
"""Heads of a table's columns; the first is the area or the kind."""
ENDS = ("killed", "survived", "unrun", "equivalent", "broken")
WIDTHS = (-11, 8, 7, 9, 6, 11, 7, 6, 8)
SURE = 1.96
"""Standard errors on either side of an interval of 95 %."""


def report(outcomes: Sequence[Outcome], places: int, seed: int, by: str = "") -> str:
    """Return the whole report; `by` says by which tests, where not all were run."""
    by = f", by {by}: scores are at least so high" if by else ""
    parts = [
        *(survivor(one) for one in outcomes if one.end in ("survived", "unrun", "broken")),
        f"{len(outcomes)} mutants of {places} places, seed {seed}{by}\n",
        table("area", outcomes, lambda one: area_of(one.mutant.file), NAMES),
        table("kind", outcomes, lambda one: one.mutant.place.kind, ()),
    ]
    return "\n".join(parts)


def survivor(one: Outcome) -> str:
    """Return what is told of a mutant that nothing noticed, or that cannot be tried."""
    why = {
        "survived": f"{one.tests} tests run it",
        "unrun": "no test runs it",
        "broken": f"broken, as this fails without it too:\n    {one.by}",
    }
    head = f"{one.mutant.file}:{one.mutant.line}  {one.mutant.place.kind}, {why[one.end]}"
    return "\n".join((head, *(f"    {line}" for line in one.mutant.diff), ""))


def table(
    what: str, outcomes: Sequence[Outcome], name_of: Callable[[Outcome], str], order: Sequence[str]
) -> str:
    """Return a table of scores, a row a name, those of an order first, and one for all."""
    names = {name_of(one) for one in outcomes}
    known = [name for name in order if name in names]
    rows = [
        _row(name, [one for one in outcomes if name_of(one) == name])
        for name in (*known, *sorted(names - set(known)))
    ]
    return "\n".join((_line((what, *HEAD[1:])), *rows, _row("all", outcomes), ""))


def _row(name: str, outcomes: Sequence[Outcome]) -> str:
    counts = [sum(one.end == end for one in outcomes) for end in ENDS]
    tried = sum(counts[:3])
    score = f"{100 * counts[0] / tried:.0f} %" if tried else "-"
    return _line((name, len(outcomes), *counts, score, interval(counts[0], tried)))


def interval(killed: int, tried: int) -> str:
    """Return between which scores the score of all mutants lies, in per cent (Wilson, 1927).

    >>> interval(9, 10), interval(0, 0)
    ('60-98', '-')
    """
    if not tried:
        return "-"
    share, slack = killed / tried, SURE**2 / tried
    middle = share + slack / 2
    half = math.sqrt(slack * share * (1 - share) + slack**2 / 4)
    low, high = (100 * (middle + sign * half) / (1 + slack) for sign in (-1, 1))
    return f"{low:.0f}-{high:.0f}"


def _line(cells: Iterable[object]) -> str:
    aligned = (
        f"{cell!s:<{-width}}" if width < 0 else f"{cell!s:>{width}}"
        for cell, width in zip(cells, WIDTHS, strict=True)
    )
    return "".join(aligned).rstrip()
