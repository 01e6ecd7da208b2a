"""How runs were made, in classes that can be counted.

Guarantees: a lot counts by its weakest link: of all that went into it and met oil or a filter, the
shortest contact, the warmest filter and so on. Refuses: to class by which lots failed.
"""

from collections.abc import Callable, Iterable
from fractions import Fraction

from msgspec import Struct

from ledger.domain.entries import Formula
from ledger.domain.lots.process import Figures
from ledger.science.statistics.classes import classed


class _Setting(Struct, frozen=True):
    """One setting and how lots are compared in it."""

    name: str
    unit: str
    of: Callable[[Figures], Fraction | None]
    weakest: Callable[[Iterable[Fraction]], Fraction]
    limit: Callable[[Formula], Fraction | None] = lambda _: None
    is_least: bool = False


def _step_limit(
    verb: str, field: str, scale: int, *, is_chill: bool | None = None
) -> Callable[[Formula], Fraction | None]:
    """Return a reader of a formula's limit; a rest with a highest temperature is a chill."""

    def limit(formula: Formula) -> Fraction | None:
        limits = [
            getattr(step, field)
            for step in formula.steps
            if step.verb == verb
            and is_chill in (None, step.temp_max_mdegc is not None)
            and getattr(step, field) is not None
        ]
        return Fraction(limits[0], scale) if len(set(limits)) == 1 else None

    return limit


_SETTINGS = (
    _Setting(
        "contact time",
        "h",
        lambda made: made.contact_h,
        min,
        _step_limit("rest", "minutes_min", 60, is_chill=False),
        is_least=True,
    ),
    _Setting(
        "passes",
        "",
        lambda made: made.passes,
        min,
        _step_limit("filter", "passes_min", 1),
        is_least=True,
    ),
    _Setting(
        "finest pore size",
        "µm",
        lambda made: made.pore_um,
        max,
        _step_limit("filter", "pore_max_nm", 1000),
    ),
    _Setting(
        "chill time",
        "h",
        lambda made: made.chill_h,
        min,
        _step_limit("rest", "minutes_min", 60, is_chill=True),
        is_least=True,
    ),
    _Setting(
        "chill temperature",
        "°C",
        lambda made: made.chill_degc,
        max,
        _step_limit("rest", "temp_max_mdegc", 1000, is_chill=True),
    ),
    _Setting(
        "filter temperature",
        "°C",
        lambda made: made.filter_degc,
        max,
        _step_limit("filter", "temp_max_mdegc", 1000),
    ),
    _Setting("strength of spirit", "% vol", lambda made: made.spirit_abv, min),
    _Setting("carbonate", "g/mL oil", lambda made: made.carbonate_g_per_ml, min),
)


class Making(Struct, frozen=True):
    """One run with all that matters to how it was made."""

    code: str
    """Code of its lot."""
    figures: tuple[Figures, ...]
    """Its own and those of the runs it is made of, where oil or a filter was met."""
    formulas: tuple[Formula, ...]
    """Formulas they followed."""
    maker: str
    """Who made it."""
    essence_makers: tuple[str, ...]
    """Who made what it is made of, where oil was met."""
    batches: tuple[str, ...]
    """Codes of the runs it is made of, where oil or a filter was met."""
    bases: tuple[str, ...]
    """Codes of the other runs it is made of, such as base syrup."""


def settings_of(makings: Iterable[Making]) -> dict[str, dict[str, str]]:
    """Return for each run, by its code, its settings with their levels in words."""
    made = list(makings)
    levels = {making.code: {"made by": making.maker} for making in made}
    if any(making.essence_makers for making in made):
        for making in made:
            levels[making.code]["essence made by"] = ", ".join(making.essence_makers) or "nobody"
    for setting in _SETTINGS:
        figures = {making.code: _weakest(setting, making.figures) for making in made}
        if all(figure is None for figure in figures.values()):
            continue
        limit = _agreed(setting.limit(formula) for making in made for formula in making.formulas)
        classes = classed(figures, setting.unit, limit, is_least=setting.is_least)
        for code, level in classes.items():
            levels[code][setting.name] = level
    return levels


def _weakest(setting: _Setting, figures: Iterable[Figures]) -> Fraction | None:
    known = [figure for made in figures if (figure := setting.of(made)) is not None]
    return setting.weakest(known) if known else None


def _agreed(limits: Iterable[Fraction | None]) -> Fraction | None:
    told = {limit for limit in limits if limit is not None}
    return told.pop() if len(told) == 1 else None
