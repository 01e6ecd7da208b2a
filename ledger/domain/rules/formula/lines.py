"""Following: what goes into a batch and comes out of it is compared with its formula.

Guarantees: more or less than the formula allows is recorded with a reason only.
"""

from collections.abc import Iterator

from ledger.domain.amounts.quantity import Measure, Quantity, show_apart
from ledger.domain.entries import Add, Draft, Entry, Finish, Formula, Start
from ledger.domain.entries.choices import AddedAs
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import LotState, density_mg_per_l, in_measure, latest
from ledger.domain.masters.formulas import Wanted, together, version_of, wanted
from ledger.domain.rules.figures import per_cent_exactly, per_cent_outside, span
from ledger.domain.rules.finding import SAY_WHY, Finding, Rule, needs_reason


def materials_are_the_formulas(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What goes in is what the formula calls for, and no more of it than it allows."""
    facts, formula, lot = draft.facts, scene.control.formula, scene.lot
    if not isinstance(facts, Add) or formula is None or lot is None or not formula.lines:
        return
    # A formula that names nothing made here leaves it open what of that goes in.
    is_open = scene.control.is_made(facts.source) and not any(
        line.formula for line in formula.lines
    )
    if facts.added_as is not AddedAs.INGREDIENT or is_open:
        return
    called = scene.control.called(facts.source)
    line = next((line for line in _wanted(formula, lot) if line.called == called), None)
    if line is not None:
        yield from _too_much(facts, line, formula, lot, scene)
        return
    listed = ", ".join(dict.fromkeys(line.called.code for line in _wanted(formula, lot)))
    yield needs_reason(
        "formula",
        f"{facts.source} is not in {version_of(formula)}, which calls for {listed}.",
        SAY_WHY,
    )


def _too_much(
    facts: Add, line: Wanted, formula: Formula, lot: LotState, scene: Scene
) -> Iterator[Finding]:
    more = _in_measure(facts.amount, line.measure, scene.source(facts.source))
    total = went_in(line, lot, scene)
    if more is None or total is None or line.most is None:
        return
    if total + more > line.most:
        there, called, most = show_apart(line.measure, total + more, line.amount, line.most)
        yield needs_reason(
            "formula",
            f"With this {there} of {line.called.code} are in {lot.code}; {version_of(formula)} "
            f"calls for {called}, at most {most}.",
            SAY_WHY,
        )


def nothing_is_short(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """When the making ends, all of the formula's materials are in."""
    formula, lot = scene.control.formula, scene.lot
    if not isinstance(draft.facts, Finish) or formula is None or lot is None:
        return
    for line in _wanted(formula, lot):
        total = went_in(line, lot, scene)
        # Where no tolerance is given any of it is enough.
        least = line.least if line.least is not None else 1
        if total is not None and total < least:
            there, called, lowest = show_apart(line.measure, total, line.amount, least)
            yield needs_reason(
                "formula",
                f"Of {line.called.code} {there if total else 'nothing'} went into {lot.code}; "
                f"{version_of(formula)} calls for {called}"
                + (f", at least {lowest}." if line.least else "."),
                "Record the addition that is missing: pottle add ... (or say why with --because).",
            )


def went_in(line: Wanted, lot: LotState, scene: Scene) -> int | None:
    """Return how much of a line was added, in its measure; None when not comparable."""
    total = 0
    for entry in lot.entries:
        facts = entry.facts
        if not isinstance(facts, Add) or facts.added_as is not AddedAs.INGREDIENT:
            continue
        if scene.control.called(facts.source) != line.called:
            continue
        amount = _taken(entry, facts, line.measure, scene)
        if amount is None:
            return None
        total += amount
    return total


def _taken(entry: Entry, facts: Add, measure: Measure, scene: Scene) -> int | None:
    if facts.amount.measure is measure:
        return facts.amount.amount
    inputs = {lot.code: lot.measure for lot in scene.control.inputs}
    if inputs.get(facts.source) is measure and entry.postings:
        return entry.postings[0].taken
    return _in_measure(facts.amount, measure, scene.source(facts.source))


def _in_measure(amount: Quantity, measure: Measure, source: LotState | None) -> int | None:
    return in_measure(amount, measure, density_mg_per_l(source) if source else None)


def _wanted(formula: Formula, lot: LotState) -> tuple[Wanted, ...]:
    start = latest(lot, Start)
    return together(wanted(formula, start.target.amount)) if start else ()


def yield_is_expected(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What came out lies between the shares of the target that the formula expects."""
    facts, formula, lot = draft.facts, scene.control.formula, scene.lot
    start = latest(lot, Start) if lot else None
    if not isinstance(facts, Finish) or formula is None or start is None:
        return
    low, high = formula.yield_min_mpct, formula.yield_max_mpct
    share = 100_000 * facts.volume.amount / start.target.amount
    if (low is not None and share < low) or (high is not None and share > high):
        yield needs_reason(
            "yield",
            f"{facts.volume.written} are {per_cent_outside(share, low, high)} of the "
            f"{start.target.written} aimed at; {version_of(formula)} expects "
            f"{span(low, high, per_cent_exactly)}.",
            "Find out why, and say it with --because.",
        )


RULES: tuple[Rule, ...] = (materials_are_the_formulas, nothing_is_short, yield_is_expected)
