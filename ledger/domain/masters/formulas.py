"""A formula's name, its amounts for another volume, and the step that an entry belongs to.

Guarantees: amounts scale exactly with the volume and are rounded once, half to even; limits are
taken with the overage. Refuses: to guess a tolerance that the formula does not give.
"""

from collections.abc import Iterable, Iterator
from fractions import Fraction
from typing import NamedTuple

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Facts, Filter, Formula, Look, Rest, Withdrawal
from ledger.domain.entries.choices import Grade, LookedAt
from ledger.domain.entries.masters import FormulaLine, FormulaStep

AFTER_PACKING = frozenset({"bottle", "labels"})
"""Steps after which those of a formula look after goods that have left already."""
CHANGING = frozenset({"add", "filter", "rinse"})
"""Verbs of steps after which a lot may look otherwise."""
WHOLE_MPCT = 100_000
"""All of it, in thousandths of a per cent."""


class Called(NamedTuple):
    """What a line of a formula calls for; neither for what was made by no formula."""

    material: str | None
    """Code of the material, of what is bought."""
    formula: str | None
    """Code of the formula, of what is made here."""

    @property
    def code(self) -> str:
        """The code of either."""
        return self.material or self.formula or ""


class Wanted(Struct, frozen=True):
    """How much a batch of some volume calls for, of one thing."""

    called: Called
    """What it calls for."""
    measure: Measure
    """The measure in which the formula gives it."""
    amount: int
    """The amount, with the overage."""
    least: int | None
    """The least that the tolerance allows; None when there is none."""
    most: int | None
    """The most that the tolerance allows."""
    line: FormulaLine
    """The line of the formula; the first of several."""


def version_of(formula: Formula | Withdrawal) -> str:
    """Return the code and the version of a formula, as every paper and sentence names it."""
    return f"{formula.code} version {formula.version}"


def called_for(line: FormulaLine) -> Called:
    """Return what a line calls for."""
    return Called(line.material, line.formula)


def wanted(formula: Formula, target_ul: int) -> tuple[Wanted, ...]:
    """Return what a batch of `target_ul` microlitres calls for, in the formula's order."""
    return tuple(_wanted(line, Fraction(target_ul, formula.basis.amount)) for line in formula.lines)


def _wanted(line: FormulaLine, times: Fraction) -> Wanted:
    exact = line.amount.amount * times * (1 + Fraction(line.overage_mpct or 0, WHOLE_MPCT))
    off = line.tolerance_mpct
    share = None if off is None else Fraction(off, WHOLE_MPCT)
    return Wanted(
        called=called_for(line),
        measure=line.amount.measure,
        amount=round(exact),
        least=None if share is None else round(exact * (1 - share)),
        most=None if share is None else round(exact * (1 + share)),
        line=line,
    )


def together(lines: Iterable[Wanted]) -> tuple[Wanted, ...]:
    """Return what is wanted of each thing in all, where several lines name it in one measure.

    It has limits only if each of its lines has.
    """
    sums: dict[tuple[Called, Measure], Wanted] = {}
    for line in lines:
        key = (line.called, line.measure)
        sums[key] = _sum(sums[key], line) if key in sums else line
    return tuple(sums.values())


def _sum(one: Wanted, other: Wanted) -> Wanted:
    return replace(
        one,
        amount=one.amount + other.amount,
        least=_both(one.least, other.least),
        most=_both(one.most, other.most),
    )


def _both(one: int | None, other: int | None) -> int | None:
    return None if one is None or other is None else one + other


def before_packing(formula: Formula) -> Iterator[tuple[int, FormulaStep]]:
    """Yield the steps of a formula up to the filling, with their numbers."""
    for number, step in enumerate(formula.steps, 1):
        if step.verb in AFTER_PACKING:
            return
        yield number, step


def look_steps(formula: Formula) -> list[tuple[FormulaStep, bool]]:
    """Return the look steps before the filling, and whether no later one changes the lot."""
    steps = [step for _, step in before_packing(formula)]
    last_change = max((n for n, step in enumerate(steps) if step.verb in CHANGING), default=-1)
    return [(step, n > last_change) for n, step in enumerate(steps) if step.verb == "look"]


def steps_for(formula: Formula, facts: Facts) -> Iterator[FormulaStep]:
    """Yield the steps of a formula that an entry may be one of, in their order."""
    verb = "filter" if isinstance(facts, Filter) else facts.KIND
    for step in formula.steps:
        if step.verb == verb and _is_of(step, facts):
            yield step


def _is_of(step: FormulaStep, facts: Facts) -> bool:
    match facts:
        case Rest(purpose=purpose):
            return step.rest_for in (None, purpose)
        case Look(looked_at=seen, dilution=dilution):
            is_diluted_so = step.dilution is None or step.dilution == dilution
            return step.looked_at in (None, seen) and is_diluted_so
        case _:
            return True


def worst_wanted(formula: Formula, looked_at: LookedAt) -> Grade | None:
    """Return the worst grade at which what is looked at is as wanted; None where nothing is said.

    A glass has its own where a step says so: oil that syrup holds comes out in soda water, and that
    is no fault of the syrup.
    """
    if looked_at is LookedAt.AS_POURED:
        said = [
            step.worst
            for step in formula.steps
            if step.verb == Look.KIND and step.looked_at is looked_at and step.worst
        ]
        if said:
            return max(said, key=tuple(Grade).index)
    return formula.wanted_clarity
