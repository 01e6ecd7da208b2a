"""Yield and loss of a lot: what went in, what each act left, what came out, what nobody explains.

Guarantees: figures follow from the measured volumes in force; of each filtration and of the batch
in = out + heel + cake + rinse apart + waste + unexplained. Refuses: to book what nobody measured;
a part that was not measured stays in the unexplained, and mixing and dissolving are said to.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from ledger.domain.entries import Decant, Entry, Filter, Finish, Formula, MakeUp, Move, Rinse, Start
from ledger.domain.entries.words import MoveAs, RinseTo
from ledger.domain.lots import LotState, latest
from ledger.domain.quantity import Measure, show
from ledger.service.tracing import Carried
from reports.build.formulas import percent_of, span
from reports.format import percent, tidy

Line = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Parts:
    """What became of the liquid of a batch, in microlitres."""

    went_in: int
    """All liquids put in, with what it was made up and rinsed with."""
    came_out: int
    """What was measured at the end of the making."""
    heel: int
    """Heels that were measured."""
    cake: int
    """What was measured in cakes."""
    apart: int
    """Rinse liquor kept apart or thrown away that had been batch liquid."""
    waste: int
    """What was spilt or thrown away."""

    @property
    def unexplained(self) -> int:
        """What is left over: evaporation, what stayed in cakes and vessels, errors of reading."""
        explained = self.came_out + self.heel + self.cake + self.apart + self.waste
        return self.went_in - explained


def balance(
    state: LotState, inputs: tuple[Carried, ...], formula: Formula | None = None
) -> tuple[Line, ...]:
    """Return the lines of a batch's balance, label and value; empty for lots not made here."""
    started = latest(state, Start)
    if started is None:
        return ()
    lines = [("Target", tidy(started.target.written))]
    lines += _went_in(inputs)
    lines += [line for entry in state.entries for line in _act(entry)]
    finished = latest(state, Finish)
    if finished:
        lines += _came_out(started, finished, formula)
        lines += _reconciled(state, inputs, finished)
    return tuple(lines)


def _came_out(started: Start, finished: Finish, formula: Formula | None) -> Iterator[Line]:
    out, target = finished.volume.amount, started.target.amount
    yield "Came out", show(out, Measure.UL)
    yield "Share of target", percent(out, target)
    if formula and (formula.yield_min_mpct is not None or formula.yield_max_mpct is not None):
        low, high = formula.yield_min_mpct, formula.yield_max_mpct
        yield "Share expected by the formula", span(percent_of(low), percent_of(high))


def _reconciled(state: LotState, inputs: tuple[Carried, ...], finished: Finish) -> Iterator[Line]:
    parts = parts_of(state, inputs, finished)
    if not parts.went_in:
        return
    if not any(edge.measure is Measure.MG for edge in inputs):
        yield "Share of liquids put in", percent(parts.came_out, parts.went_in)
    for label, amount in (
        ("Heels", parts.heel),
        ("In cakes, as measured", parts.cake),
        ("Rinse kept apart or thrown away", parts.apart),
        ("Spilt or thrown away", parts.waste),
        ("Of what came out, kept back as samples", _retained(state)),
    ):
        if amount:
            yield label, show(amount, Measure.UL)
    share = percent(abs(parts.unexplained), parts.went_in)
    if parts.unexplained < 0:
        yield "More than the liquids: solids dissolved", show(-parts.unexplained, Measure.UL)
    else:
        label = "Unexplained, filters included" if _holds_unmeasured(state) else "Unexplained"
        yield label, f"{show(parts.unexplained, Measure.UL)}, {share}"


def parts_of(state: LotState, inputs: tuple[Carried, ...], finished: Finish) -> Parts:
    """Return what became of the liquid of a finished batch."""
    told = [entry.draft.facts for entry in state.entries]
    return Parts(
        went_in=sum(edge.amount for edge in inputs if edge.measure is Measure.UL),
        came_out=finished.volume.amount,
        heel=sum(item.heel.amount for item in told if isinstance(item, Decant) and item.heel),
        cake=sum(item.in_cake.amount for item in told if isinstance(item, Filter) and item.in_cake),
        apart=sum(_carried_off(item) for item in told if isinstance(item, Rinse)),
        waste=finished.waste.amount if finished.waste else 0,
    )


def _holds_unmeasured(state: LotState) -> bool:
    """Return whether a filter kept liquid of which nobody measured how much was in the cake."""
    passes = (entry.draft.facts for entry in state.entries)
    return any(
        item.in_cake is None and item.volume_in.amount > item.volume_out.amount
        for item in passes
        if isinstance(item, Filter)
    )


def _carried_off(rinse: Rinse) -> int:
    """Return what a rinse that did not go into the batch took of the batch's own liquid."""
    if rinse.went_to is RinseTo.BATCH:
        return 0
    return max(rinse.volume_out.amount - rinse.volume_in.amount, 0)


def _retained(state: LotState) -> int:
    told = [entry.draft.facts for entry in state.entries]
    kept = (item for item in told if isinstance(item, Move) and item.moved_as is MoveAs.RETAINED)
    return sum(item.amount.amount for item in kept if item.amount.measure is Measure.UL)


def _went_in(inputs: tuple[Carried, ...]) -> list[Line]:
    lines = []
    for measure, label in ((Measure.UL, "Liquids put in"), (Measure.MG, "Solids put in")):
        total = sum(edge.amount for edge in inputs if edge.measure is measure)
        if total:
            lines.append((label, show(total, measure)))
    return lines


def _act(entry: Entry) -> list[Line]:
    match entry.draft.facts:
        case Filter() as passed:
            return _filtration(passed)
        case Decant(heel=heel) if heel:
            return [("Heel left", tidy(heel.written))]
        case Rinse(volume_in=put_on, volume_out=out):
            return [("Rinse", f"{tidy(put_on.written)} in, {tidy(out.written)} out")]
        case MakeUp(used=used):
            return [("Made up with", tidy(used.written))]
        case _:
            return []


def _filtration(passed: Filter) -> list[Line]:
    """Return what one pass left in the filter, and how much of it the cake explains."""
    left = passed.volume_in.amount - passed.volume_out.amount
    words = show(left, Measure.UL)
    if left and passed.volume_in.amount:
        words += f", {percent(left, passed.volume_in.amount)}"
    lines = [(f"Left in filter, pass {passed.pass_no}", words)]
    if passed.in_cake:
        rest = left - passed.in_cake.amount
        words = f"{tidy(passed.in_cake.written)}, {show(rest, Measure.UL)} unexplained"
        lines.append(("Of it in the cake", words))
    return lines
