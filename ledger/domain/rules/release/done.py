"""Done: every step of a formula up to the filling is in the book of a lot on its way out.

Guarantees: each step has an entry of its own, in their order; one rest or one reading never stands
for two steps; a rest counts once it is over.
"""

import re
from collections.abc import Iterator
from typing import NamedTuple

from ledger.domain.entries import Draft, Entry, Formula, Measurement, Rest
from ledger.domain.entries.choices import Measured
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import LotState, passes
from ledger.domain.masters.formulas import before_packing, steps_for, version_of
from ledger.domain.rules.finding import Finding, Rule
from ledger.domain.rules.release.barriers import stands_in_the_way, to_release

NEXT = {
    "rest": "rest {lot} --for {what} --started WHEN --until WHEN",
    "filter": "filter {lot} --medium paper --pore SIZE --out VOLUME",
    "rinse": "rinse {lot} --with LOT --in VOLUME --out VOLUME --to WHERE",
    "decant": "decant {lot} VOLUME",
    "measure": "measure {lot} {what} READING",
    "makeup": "makeup {lot} VOLUME --with LOT",
}
"""Verbs of steps of which an entry must be in the book, and how each is recorded."""
READINGS = frozenset({Measured.BRIX, Measured.ABV, Measured.DENSITY, Measured.PH})
"""Readings whose name in a step's words says what is read, never how: as warmth or weight may."""


class Missing(NamedTuple):
    """A step of which no entry is in the book of a lot."""

    number: int
    """Its number in the formula."""
    step: FormulaStep
    """The step."""
    goes_on: bool
    """Whether it was begun and is not over."""


def steps_are_done(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Every step of the formula up to the filling is in the book."""
    lot, formula = to_release(draft, scene), scene.control.formula
    if lot is None or formula is None:
        return
    making = lot.bulk or lot
    for number, step, goes_on in missing_steps(formula, making):
        named = f"Step {number} of {version_of(formula)}, {_named(step)},"
        if goes_on:
            what = f"{named} was begun and still goes on in the book of {making.code}."
            yield stands_in_the_way(what, "If it is over", f"pottle rest {making.code} --end")
        else:
            what = f"{named} is not in the book of {making.code}."
            yield stands_in_the_way(what, "Record it", record_of(step, making.code))
    asked = sum(step.passes_min or 1 for step in formula.steps if step.verb == "filter")
    if 0 < passes(making) < asked:
        yield stands_in_the_way(
            f"{making.code} had {passes(making)} of the {asked} passes that {version_of(formula)} "
            "asks for.",
            "Filter it again",
            f"pottle {NEXT['filter'].format(lot=making.code)}",
        )


def record_of(step: FormulaStep, code: str) -> str:
    """Return the command that records a step of which an entry must be in the book."""
    what = step.rest_for or reading_of(step) or ("PURPOSE" if step.verb == "rest" else "WHAT")
    return f"pottle {NEXT[step.verb].format(lot=code, what=what)}"


def reading_of(step: FormulaStep) -> Measured | None:
    """Return what a step says is to be read, where its words name one reading; else None.

    >>> reading_of(FormulaStep("measure", words="pH of one part in ten, at room temperature"))
    <Measured.PH: 'ph'>
    >>> reading_of(FormulaStep("measure", words="Read the base before the essence goes in."))
    """
    if step.verb != "measure":
        return None
    told = set(re.findall(r"[a-z]+", (step.words or "").lower()))
    named = [reading for reading in READINGS if reading in told]
    return named[0] if len(named) == 1 else None


def missing_steps(formula: Formula, lot: LotState) -> list[Missing]:
    """Return the steps up to the filling that have no entry of their own, in their order.

    A step that says what it is for has its pick first; what is left over is for those that do not.
    """
    asked = [(number, step) for number, step in before_packing(formula) if step.verb in NEXT]
    left = _acts(lot)
    missing = []
    for number, step in sorted(asked, key=lambda item: not _is_particular(item[1])):
        own = next((entry for entry in left if _is_of(step, entry, formula)), None)
        if own is None or _goes_on(own):
            missing.append(Missing(number, step, own is not None))
        # The passes of all steps are counted together afterwards, so a pass stays for the next.
        if own is not None and step.verb != "filter":
            left.remove(own)
    return sorted(missing, key=lambda item: item.number)


def _acts(lot: LotState) -> list[Entry]:
    """Return the entries of a lot; of a rest told by its begin and its end only the end.

    A rest that goes on comes last, so that it answers a step only where no other rest does.
    """
    told = {e.facts.began for e in lot.entries if isinstance(e.facts, Rest)}
    return sorted((e for e in lot.entries if e.stands_for not in told), key=_goes_on)


def _goes_on(entry: Entry) -> bool:
    return isinstance(entry.facts, Rest) and entry.facts.ended_at is None


def _is_particular(step: FormulaStep) -> bool:
    return step.rest_for is not None or reading_of(step) is not None


def _is_of(step: FormulaStep, entry: Entry, formula: Formula) -> bool:
    facts = entry.facts
    wanted = reading_of(step)
    if wanted and isinstance(facts, Measurement) and facts.what is not wanted:
        return False
    return step in steps_for(formula, facts)


def _named(step: FormulaStep) -> str:
    if step.rest_for:
        return f"rest to {step.rest_for}"
    wanted = reading_of(step)
    return f"{step.verb} {wanted}" if wanted else step.verb


RULES: tuple[Rule, ...] = (steps_are_done,)
