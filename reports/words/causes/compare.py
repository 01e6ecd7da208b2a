"""A trial compared, in words, rows and places on a plot.

Guarantees: no effect is told of factors that moved together; what repeats differ by stands beside
every effect. Refuses: to call a difference real.
"""

from collections.abc import Sequence
from datetime import datetime
from fractions import Fraction
from typing import NamedTuple

from ledger.science.statistics.trials import Factor, Jar, Spread, mean
from ledger.service.causes.compare import GRADES, Comparison, Uneven
from reports.kit.format import plural
from reports.kit.frame import frame_of
from reports.kit.tables import Sheet
from reports.views.causes import BatchRow, ComparisonView, FactorView, LevelRow
from reports.words.causes.odds import listed
from reports.words.causes.plots import plots_of
from reports.words.causes.scatter import scatter_of
from reports.words.causes.trial import outcome_lines

MOST_AGES = 2
"""How many ages a table has room for: the first and the last."""


class Response(NamedTuple):
    """What is compared, in words."""

    what: str
    """What may differ."""
    one: str
    """One of what it differs by."""
    many: str
    """Several."""


GRADE = Response("grade", "grade", "grades")
NTU = Response("NTU", "NTU", "NTU")
YIELD = Response("yield", "point of yield", "points of yield")


def comparison_view(found: Comparison, written_at: datetime | None = None) -> ComparisonView:
    """Return all that a screen or a paper shows of a trial."""
    ages = found.ages if len(found.ages) <= MOST_AGES else (found.ages[0], found.ages[-1])
    return ComparisonView(
        frame=frame_of(found.house, found.seal, written_at),
        group=found.group,
        lines=(_head(found), *_cautions(found)),
        ages=ages,
        factors=tuple(_factor(item, found, ages) for item in found.factors),
        plots=plots_of(found),
        batches=tuple(_batch(jar, found) for jar in sorted(found.jars, key=_clearest)),
        front=_front(found),
        outcome=tuple(outcome_lines(found.outcome, names_of(found)) if found.outcome else ()),
        scatter=scatter_of(found.jars),
    )


def trial_table(view: ComparisonView) -> Sheet:
    """Return the batches of a trial as a table for a spreadsheet."""
    heads = ("batch", "settings", "last_look", "ntu", "yield_percent", "is_not_beaten")
    rows = tuple(
        (
            *(row.lot, row.settings, row.look, row.ntu, row.yield_pct),
            "yes" if row.is_front else "no",
        )
        for row in view.batches
    )
    return Sheet(heads, rows)


def _head(found: Comparison) -> str:
    controls = sum(jar.is_control for jar in found.jars)
    beside = f", {controls} of them the control" if controls else ", none of them a control"
    held = listed(f"{brief.code} {brief.name}" for brief in found.held) if found.held else "no lot"
    batches = plural(len(found.jars), "batch", "batches")
    return f"Trial {found.group}: {batches}{beside}. In all of them: {held}."


def _cautions(found: Comparison) -> list[str]:
    lines = []
    # Of a planned trial the usual levels are the house's own way.
    if not found.outcome and not any(jar.is_control for jar in found.jars):
        lines.append("Without a control nothing tells how the house's own way would have done.")
    if not any(jar.grades for jar in found.jars):
        lines.append("Nobody has looked at any of them yet.")
    return [*lines, *map(_uneven, found.uneven), _noise(found.spread)]


def names_of(found: Comparison) -> dict[str, str]:
    """Return what the lots are that went into the batches, by their codes."""
    return {lot.code: lot.name for lot in found.lots}


def _uneven(item: Uneven) -> str:
    told = listed(f"{code} in {count}" for code, count in item.lots)
    return f"Not all batches had the same {item.name}, and no factor says so: {told}."


def _noise(spread: Spread) -> str:
    if not spread.batches:
        return (
            "No batch has a repeat, so nothing tells how much differs by chance alone; take "
            "differences as hints."
        )
    told = [
        plural(spread.grade, "grade") if spread.grade is not None else "",
        _so_many(spread.ntu, NTU) if spread.ntu is not None else "",
        _so_many(spread.yield_pct, YIELD) if spread.yield_pct is not None else "",
    ]
    words = listed(word for word in told if word) if any(told) else "nothing known yet"
    return (
        f"The {spread.batches} batches with a repeat differ from it by up to {words}; what factors "
        "do within that means nothing."
    )


def _factor(factor: Factor, found: Comparison, ages: Sequence[str]) -> FactorView:
    if factor.moved_with:
        return FactorView(
            factor.name,
            (),
            f"{factor.name} and {listed(factor.moved_with)} changed together, so no effect is "
            "shown for it. Change them apart in the next trial.",
        )
    controls = tuple(jar for jar in found.jars if jar.is_control)
    rows = [_level(level, jars, ages) for level, jars in factor.levels]
    if controls:
        rows.append(_level("control", controls, ages))
    return FactorView(factor.name, tuple(rows), _effect(factor))


def _level(level: str, jars: Sequence[Jar], ages: Sequence[str]) -> LevelRow:
    return LevelRow(
        level=level,
        n=str(len(jars)),
        looks=tuple(grades([jar.grade_at(age) for jar in jars]) for age in ages),
        ntu=_number(mean([jar.ntu for jar in jars])),
        yield_pct=_number(mean([jar.yield_pct for jar in jars])),
    )


def grades(ranks: Sequence[int | None]) -> str:
    """Return the best and the worst grade of batches, or a dash.

    >>> grades([1, 2, None, 1]), grades([0]), grades([None])
    ('clear–hazy', 'bright', '–')
    """
    known = [rank for rank in ranks if rank is not None]
    if not known:
        return "–"
    best, worst = GRADES[min(known)], GRADES[max(known)]
    return str(best) if best is worst else f"{best}–{worst}"


def _effect(factor: Factor) -> str:
    if len(factor.levels) < 2:
        return f"{factor.name} had one level only, so nothing compares with it."
    (low, first), (high, last) = factor.levels[0], factor.levels[-1]
    told = [
        _moved(_gap(first, last, "last_grade"), GRADE, "clearer", "less clear", turned=True),
        _moved(_gap(first, last, "ntu"), NTU, "lower", "higher", turned=True),
        _moved(_gap(first, last, "yield_pct"), YIELD, "more", "less"),
    ]
    words = listed(word for word in told if word) if any(told) else "nothing known of either"
    return f"{high} against {low} (means of {len(last)} and {len(first)}): {words}."


def _gap(first: Sequence[Jar], last: Sequence[Jar], name: str) -> Fraction | None:
    before = mean([getattr(jar, name) for jar in first])
    after = mean([getattr(jar, name) for jar in last])
    return None if before is None or after is None else after - before


def _moved(
    gap: Fraction | None, response: Response, up: str, down: str, *, turned: bool = False
) -> str:
    if gap is None:
        return ""
    if not gap:
        return f"no difference in {response.what}"
    return f"{_so_many(abs(gap), response)} {up if (gap < 0) == turned else down}"


def _so_many(value: Fraction, response: Response) -> str:
    return f"{_number(value)} {response.one if value == 1 else response.many}"


def _number(value: Fraction | None) -> str:
    if value is None:
        return "–"
    text = f"{float(value):.2f}" if abs(value) < 10 else f"{float(value):.1f}"
    return text.rstrip("0").rstrip(".")


def _clearest(jar: Jar) -> tuple[int, Fraction, str]:
    rank = len(GRADES) if jar.last_grade is None else jar.last_grade
    return rank, -(jar.yield_pct or Fraction(0)), jar.lot


def _batch(jar: Jar, found: Comparison) -> BatchRow:
    return BatchRow(
        lot=jar.lot,
        settings=settings(jar),
        look=grades([jar.last_grade]),
        ntu=_number(jar.ntu),
        yield_pct=_number(jar.yield_pct),
        is_front=jar in found.front,
    )


def settings(jar: Jar) -> str:
    """Return the levels of a batch, or that it is the control."""
    if jar.is_control:
        return "control"
    return ", ".join(f"{name}={level}" for name, level in jar.factors.items())


def _front(found: Comparison) -> str:
    if not found.front:
        return "Which are best on clarity and loss together cannot be told: no batch has both."
    told = listed(f"{jar.lot} ({settings(jar)})" for jar in found.front)
    known = sum(jar.last_grade is not None and jar.yield_pct is not None for jar in found.jars)
    return (
        f"Of {known} with a look and a yield, none is both clearer and has less loss than: {told}."
    )
