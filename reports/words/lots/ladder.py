"""The yield of a batch as a ladder: what went in, less all that is told, is what came out.

Guarantees: each rung is told once, what a filter kept is no loss without a cause, and what nobody
accounts for comes last.
"""

from collections.abc import Iterator, Sequence

from ledger.domain.amounts.quantity import Measure, show
from ledger.domain.entries import Bottle, Entry, Formula, Receipt, Start
from ledger.domain.entries.choices import ProductKind
from ledger.domain.lots.state import LotState, in_measure_of, latest
from ledger.domain.lots.yields import Yield, yield_of
from ledger.service.lots.dossier import Dossier
from ledger.service.lots.trace import Carried
from reports.kit.format import percent, tidy
from reports.views.lots import LadderRow
from reports.words.masters.formula import percent_of, span


def ladder(
    state: LotState, inputs: Sequence[Carried], formula: Formula | None, draws: tuple[Entry, ...]
) -> tuple[LadderRow, ...]:
    """Return the rungs of a batch; empty for what was not made here or is not finished."""
    started = latest(state, Start)
    liquids = {edge.source for edge in inputs if edge.measure is Measure.UL}
    became = yield_of(state.code, state.entries, liquids, draws)
    if started is None or became is None or not became.went_in:
        return ()
    whole = became.went_in
    rungs = [_rung("", "Liquids put in", whole, whole)]
    rungs += [_rung(MINUS, what, amount, whole) for what, amount in _less(became) if amount]
    lost = became.unaccounted
    solids = _solids(started, inputs)
    came_out = _rung("=", "Came out", became.came_out, whole, is_sum=True)
    if 0 < -lost < solids:
        told = f"Added by what dissolved of {show(solids, Measure.MG)} put in, less what was lost"
        rungs += [_rung("+", told, -lost, whole), came_out]
    elif lost < 0:
        rungs += [came_out, _rung("+", "More than went in by the book", -lost, whole)]
    else:
        rungs += [came_out, _rung("", "Not accounted for", lost, whole)]
    rungs += _against(became, started, formula)
    return tuple(rungs)


def _solids(started: Start, inputs: Sequence[Carried]) -> int:
    """Return how much was weighed into a syrup, where it dissolves and adds to the volume.

    No book says how much it adds, but a gram less than a mL, since it is heavier than water.
    """
    if started.product_kind not in (ProductKind.SYRUP, ProductKind.BASE_SYRUP):
        return 0
    return sum(edge.amount for edge in inputs if edge.measure is Measure.MG)


def _less(became: Yield) -> Iterator[tuple[str, int]]:
    for number, kept in became.filters:
        yield f"Kept by the filter, pass {number}", kept
    yield "Kept by the cake when it was rinsed", became.rinse_left
    yield "Heels", became.heel
    yield "Samples and what else was taken out", became.drawn
    for code, amount in became.to_lots:
        yield f"Drawn to {code}", amount
    yield "Spilt or thrown away", became.waste


def _against(became: Yield, started: Start, formula: Formula | None) -> Iterator[LadderRow]:
    """Yield what came out beside what was meant to."""
    out, target = became.came_out, started.target.amount
    expected = ""
    if formula and (formula.yield_min_mpct is not None or formula.yield_max_mpct is not None):
        expected = span(percent_of(formula.yield_min_mpct), percent_of(formula.yield_max_mpct))
    told = f"Share of the target of {show(target, Measure.UL)}"
    if expected:
        told += f", by the formula {expected}"
    yield LadderRow("", told, "", percent(out, target))
    if became.kept_back:
        yield _rung("", "Of what came out, kept back as samples", became.kept_back, became.went_in)


def delivery_ladder(dossier: Dossier) -> tuple[LadderRow, ...]:
    """Return what became of a delivery: received is used, sent, here, and what is not told."""
    receipt, lot = latest(dossier.state, Receipt), dossier.lot
    came = in_measure_of(dossier.state, receipt.amount) if receipt else None
    if not came:
        return ()
    used = sum(edge.amount for edge in dossier.outputs)
    sent = sum(holder.amount for holder in dossier.holders)
    lost = came - used - sent - lot.on_hand
    told = (
        ("", "Received", came, True),
        (MINUS, "Used here", used, False),
        (MINUS, "Sent, thrown away or kept back", sent, False),
        ("=", "Here", lot.on_hand, True),
        ("", "Not accounted for", lost, False),
    )
    return tuple(
        LadderRow(sign, what, show(amount, lot.measure), percent(amount, came), is_sum)
        for sign, what, amount, is_sum in told
        if amount or is_sum or not sign
    )


def filling_ladder(state: LotState) -> tuple[LadderRow, ...]:
    """Return the yield of a filling: what was drawn, and what is in the bottles."""
    filled = latest(state, Bottle)
    if filled is None or not filled.drawn.amount:
        return ()
    drawn, inside = filled.drawn.amount, filled.count * filled.size.amount
    told = f"In {filled.count} bottles of {tidy(filled.size.written)}"
    return (
        _rung("", "Drawn from the bulk", drawn, drawn),
        _rung("=", told, inside, drawn, is_sum=True),
        _rung("", "Not accounted for", drawn - inside, drawn),
    )


MINUS = "\N{MINUS SIGN}"
"""Stands before what is less."""


def _rung(sign: str, what: str, amount: int, whole: int, *, is_sum: bool = False) -> LadderRow:
    return LadderRow(sign, what, show(amount, Measure.UL), percent(amount, whole), is_sum)
