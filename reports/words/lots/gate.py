"""What a release asks of a lot, as rows to tick, with what is so.

Guarantees: what is not met stands beside what is; what was released all the same names its reason.
Refuses: to judge; the rules of a release do that.
"""

from collections.abc import Iterator, Sequence

from ledger.domain.entries import Check, Deviation, Entry, Judge, Look
from ledger.domain.entries.choices import Grade, LookedAt, LotType, Verdict
from ledger.domain.lots.makers import is_self_released, makers_of
from ledger.domain.lots.state import latest
from ledger.domain.masters.formulas import version_of, worst_wanted
from ledger.domain.rules.release.done import missing_steps
from ledger.service.lots.dossier import Dossier
from reports.kit.format import clock, closed, initials, plural
from reports.views.lots import GateRow, InputRow


def gate_rows(dossier: Dossier, inputs: Sequence[InputRow]) -> tuple[GateRow, ...]:
    """Return what a release asks of a lot that was made or filled here; empty for others."""
    if dossier.state.opened.lot_type not in (LotType.MADE, LotType.PACKED):
        return ()
    return (
        *_by_formula(dossier, inputs),
        *_clear(dossier),
        *_inputs_stand(dossier),
        *_second(dossier),
        *_departures(dossier),
        *_released(dossier),
    )


def _by_formula(dossier: Dossier, inputs: Sequence[InputRow]) -> Iterator[GateRow]:
    formula = dossier.formula
    if formula is None:
        yield GateRow(None, "By a formula", "it follows none")
        return
    checker = formula.checked_by
    is_checked = checker is not None and checker != formula.prepared_by
    words = f"{version_of(formula)}, prepared by {formula.prepared_by or 'nobody named'}"
    yield GateRow(
        is_checked, "By a checked formula", f"{words}, checked by {checker or 'nobody yet'}"
    )
    if dossier.state.opened.lot_type is not LotType.MADE:
        return
    beyond = [row.what for row in inputs if row.off.endswith(BEYOND) and not row.struck]
    outside = f"outside: {', '.join(beyond)}" if beyond else "all within what the formula allows"
    yield GateRow(not beyond, "Amounts within limits", outside)
    missing = missing_steps(formula, dossier.state)
    left = ", ".join(f"{item.number} {item.step.verb}" for item in missing)
    yield GateRow(
        not missing, "Every step has its entry", f"missing: {left}" if left else "none is missing"
    )


BEYOND = "outside"
"""Said of an amount beyond its limits."""


def _clear(dossier: Dossier) -> Iterator[GateRow]:
    last = latest(dossier.state, Look)
    if last is None and dossier.state.bulk:
        last = latest(dossier.state.bulk, Look)
    looked_at = last.looked_at if last else LookedAt.NEAT
    wanted = worst_wanted(dossier.formula, looked_at) if dossier.formula else None
    if wanted is None:
        return
    if last is None:
        yield GateRow(False, f"Looked {wanted} or better", "nobody looked at it")
        return
    order = list(Grade)
    is_met = order.index(last.grade) <= order.index(wanted)
    yield GateRow(is_met, f"Looked {wanted} or better", f"last look: {last.grade}")


def _inputs_stand(dossier: Dossier) -> Iterator[GateRow]:
    barred = dossier.state.barred_inputs
    words = f"now held, rejected or recalled: {', '.join(barred)}" if barred else "none is held"
    yield GateRow(not barred, "No input held, rejected or recalled", words)


def _second(dossier: Dossier) -> Iterator[GateRow]:
    makers = makers_of(dossier.state)
    state = dossier.state
    entries = (*(state.bulk.entries if state.bulk else ()), *state.entries)
    checkers = [
        initials(entry)
        for entry in entries
        if isinstance(entry.facts, Check) and entry.draft.by not in makers
    ]
    words = f"by {', '.join(dict.fromkeys(checkers))}" if checkers else "by nobody else"
    yield GateRow(bool(checkers), "Checked by a second person", words)


def _departures(dossier: Dossier) -> Iterator[GateRow]:
    departures = [e for e in dossier.state.entries if isinstance(e.facts, Deviation)]
    answered = [entry for entry in departures if entry.draft.reason]
    words = (
        f"{plural(len(departures), 'deviation')}, {len(answered)} with a reason"
        if departures
        else "none"
    )
    yield GateRow(len(answered) == len(departures), "Deviations have their reason", words)


def _released(dossier: Dossier) -> Iterator[GateRow]:
    releases = [entry for entry in dossier.state.entries if _is_release(entry)]
    if not releases:
        yield GateRow(False, "Released", "not yet")
        return
    last = releases[-1]
    own = (
        ", who made it, and nobody else checked it"
        if is_self_released(dossier.state, last.draft.by)
        else ""
    )
    over = [
        " ".join(
            (
                closed(entry.facts.text),
                *([closed(f"Reason: {entry.draft.reason}")] if entry.draft.reason else []),
            )
        )
        for entry in dossier.state.entries
        if isinstance(entry.facts, Deviation) and entry.facts.about == last.seq
    ]
    words = f"by {initials(last)}{own}, {clock(last.draft.happened)}"
    yield GateRow(not own, "Released, not by its maker alone", words)
    for departure in over:
        yield GateRow(False, "Released all the same", departure)


def _is_release(entry: Entry) -> bool:
    return isinstance(entry.facts, Judge) and entry.facts.verdict is Verdict.RELEASE
