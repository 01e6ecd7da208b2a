"""Yield and loss of a lot in words: what went in, what each act left, what came out of it.

Guarantees: the sums are those of `ledger.domain.lots.yields`, and of each filtration in = out +
cake + unexplained. Refuses: to reckon; what mixing and dissolving do is said, not booked.
"""

from collections.abc import Iterator

from ledger.domain.amounts.quantity import Measure, show
from ledger.domain.entries import Decant, Entry, Filter, Formula, MakeUp, Rinse, Start
from ledger.domain.lots.state import LotState, latest
from ledger.domain.lots.yields import Yield, yield_of
from ledger.service.lots.trace import Carried
from reports.kit.format import percent, tidy
from reports.words.masters.formula import percent_of, span

Line = tuple[str, str]


def balance(
    state: LotState,
    inputs: tuple[Carried, ...],
    formula: Formula | None = None,
    draws: tuple[Entry, ...] = (),
) -> tuple[Line, ...]:
    """Return the lines of a batch's balance, label and value; empty for lots not made here."""
    started = latest(state, Start)
    if started is None:
        return ()
    lines = [("Target", tidy(started.target.written))]
    lines += _went_in(inputs)
    lines += [line for entry in state.entries for line in _act(entry)]
    liquids = {edge.source for edge in inputs if edge.measure is Measure.UL}
    became = yield_of(state.code, state.entries, liquids, draws)
    if became:
        lines += _came_out(started, became, formula)
        lines += _reconciled(became, inputs, holds_unmeasured=_holds_unmeasured(state))
    return tuple(lines)


def _came_out(started: Start, became: Yield, formula: Formula | None) -> Iterator[Line]:
    out, target = became.came_out, started.target.amount
    yield "Came out", show(out, Measure.UL)
    yield "Share of target", percent(out, target)
    if formula and (formula.yield_min_mpct is not None or formula.yield_max_mpct is not None):
        low, high = formula.yield_min_mpct, formula.yield_max_mpct
        yield "Share expected by the formula", span(percent_of(low), percent_of(high))


def _reconciled(
    became: Yield, inputs: tuple[Carried, ...], *, holds_unmeasured: bool
) -> Iterator[Line]:
    if not became.went_in:
        return
    if not any(edge.measure is Measure.MG for edge in inputs):
        yield "Share of liquids put in", percent(became.came_out, became.went_in)
    put_in = sum(edge.amount for edge in inputs if edge.measure is Measure.UL)
    yield from _told(became, put_in - became.went_in)
    share = percent(abs(became.unexplained), became.went_in)
    if became.unexplained < 0:
        solids = any(edge.measure is Measure.MG for edge in inputs)
        more = "the liquids: solids dissolved" if solids else "went in by the book"
        yield f"More than {more}", show(-became.unexplained, Measure.UL)
    else:
        # What filters kept stands above it, and would seem to come on top.
        label = "Unexplained, filters included" if holds_unmeasured else "Unexplained"
        yield label, f"{show(became.unexplained, Measure.UL)}, {share}"


def _told(became: Yield, put_in_after: int) -> Iterator[Line]:
    for label, amount in (
        ("Taken out before the finish", became.drawn),
        *((f"Drawn to {code} before the finish", amount) for code, amount in became.to_lots),
        ("Heels", became.heel),
        ("In cakes, as measured", became.cake),
        ("Rinse kept apart or thrown away", became.apart),
        ("Spilt or thrown away", became.waste),
        ("Of what came out, kept back as samples", became.kept_back),
        ("Put in after the finish", put_in_after),
    ):
        if amount:
            yield label, show(amount, Measure.UL)


def _holds_unmeasured(state: LotState) -> bool:
    """Return whether a filter kept liquid of which nobody measured how much was in the cake."""
    passes = (entry.facts for entry in state.entries)
    return any(
        facts.in_cake is None and facts.volume_in.amount > facts.volume_out.amount
        for facts in passes
        if isinstance(facts, Filter)
    )


def _went_in(inputs: tuple[Carried, ...]) -> list[Line]:
    lines = []
    for measure, label in ((Measure.UL, "Put in by volume"), (Measure.MG, "Put in by weight")):
        total = sum(edge.amount for edge in inputs if edge.measure is measure)
        if total:
            lines.append((label, show(total, measure)))
    return lines


def _act(entry: Entry) -> list[Line]:
    match entry.facts:
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
