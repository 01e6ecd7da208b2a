"""The gate of a lot that follows a formula: what its steps ask to be read was read.

Guarantees: a temperature, a pore size or a time that a step limits and nobody gave is told, each by
the entry in which it is missing, as that entry can be corrected. Refuses: to take what is not said
for what is right.
"""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from ledger.domain.entries import (
    Add,
    Draft,
    Entry,
    Facts,
    Filter,
    Finish,
    Formula,
    MakeUp,
    Measurement,
    Rest,
)
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.lots.scene import Scene
from ledger.domain.masters.formulas import steps_for, version_of
from ledger.domain.rules.figures import degrees, microns, span, time_of
from ledger.domain.rules.finding import Finding, Rule
from ledger.domain.rules.release.barriers import stands_in_the_way, to_release

NAMES = {
    Rest: "rest",
    Filter: "pass",
    Add: "addition",
    MakeUp: "making up",
    Finish: "finish",
    Measurement: "reading",
}
"""The acts of which a step may limit a temperature, a pore size or a time."""


class Lacking(NamedTuple):
    """What an entry does not say and its step asks for."""

    what: str
    """What it is, with its article."""
    asked: str
    """What the step asks for."""
    field: str
    """What a correction calls it, and in what it is given."""


def asked_for_is_given(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What a step of the formula limits was said of each act that is one of it."""
    lot, formula = to_release(draft, scene), scene.control.formula
    if lot is None or formula is None:
        return
    for entry in (lot.bulk or lot).entries:
        if type(entry.facts) not in NAMES or _goes_on(entry.facts):
            continue
        for lacking in _lacking(entry, formula):
            yield stands_in_the_way(
                f"Entry {entry.seq}, {_article(entry.facts)} {NAMES[type(entry.facts)]}, has no "
                f"{lacking.what}; {version_of(formula)} asks for {lacking.asked}.",
                "Say it, if it was read",
                f'pottle correct {entry.seq} --set {lacking.field} --because "WHERE IT STOOD"',
            )


def _article(facts: Facts) -> str:
    return "an" if NAMES[type(facts)].startswith("a") else "a"


def _goes_on(facts: Facts) -> bool:
    return isinstance(facts, Rest) and facts.ended_at is None


def _lacking(entry: Entry, formula: Formula) -> list[Lacking]:
    """Return what an entry lacks of the step that it answers best."""
    steps = steps_for(formula, entry.facts)
    return min((list(_of_step(step, entry.facts)) for step in steps), key=len, default=[])


def _has_pores(facts: Filter) -> bool:
    return facts.pore_low_nm is not None or facts.pore_high_nm is not None


def _of_step(step: FormulaStep, facts: Facts) -> Iterable[Lacking]:
    low, high = step.temp_min_mdegc, step.temp_max_mdegc
    is_warmth_asked = low is not None or high is not None
    if is_warmth_asked and getattr(facts, "temp_mdegc", None) is None:
        yield Lacking("temperature", span(low, high, degrees), "temp=DEGREES")
    if isinstance(facts, Filter) and step.pore_max_nm is not None and not _has_pores(facts):
        yield Lacking("pore size", f"at most {microns(step.pore_max_nm)}", "pore-high=SIZE")
    shortest, longest = step.minutes_min, step.minutes_max
    is_time_asked = shortest is not None or longest is not None
    if isinstance(facts, Filter | Add) and is_time_asked and facts.minutes is None:
        yield Lacking("time", span(shortest, longest, time_of), "minutes=MINUTES")


RULES: tuple[Rule, ...] = (asked_for_is_given,)
