"""Yield and loss of a lot: what went in by volume, what each act left, what came out.

Guarantees: figures follow from the measured volumes in force. Refuses: to book what nobody
measured.
"""

from ledger.domain.entries import Decant, Entry, Filter, Finish, MakeUp, Rinse, Start
from ledger.domain.lots import LotState, latest
from ledger.domain.quantity import Measure, show
from ledger.service.tracing import Carried
from reports.format import percent, tidy


def balance(state: LotState, inputs: tuple[Carried, ...]) -> tuple[tuple[str, str], ...]:
    """Return the lines of a batch's balance, label and value; empty for lots not made here."""
    started = latest(state, Start)
    if started is None:
        return ()
    lines = [("Target", tidy(started.target.written))]
    lines += _went_in(inputs)
    lines += [line for entry in state.entries for line in _act(entry)]
    finished = latest(state, Finish)
    if finished:
        out, target = finished.volume.amount, started.target.amount
        lines.append(("Came out", show(out, Measure.UL)))
        lines.append(("Share of target", percent(out, target)))
        if not any(edge.measure is Measure.MG for edge in inputs):
            liquid = sum(edge.amount for edge in inputs if edge.measure is Measure.UL)
            if liquid:
                lines.append(("Share of liquids put in", percent(out, liquid)))
    return tuple(lines)


def _went_in(inputs: tuple[Carried, ...]) -> list[tuple[str, str]]:
    lines = []
    for measure, label in ((Measure.UL, "Liquids put in"), (Measure.MG, "Solids put in")):
        total = sum(edge.amount for edge in inputs if edge.measure is measure)
        if total:
            lines.append((label, show(total, measure)))
    return lines


def _act(entry: Entry) -> list[tuple[str, str]]:
    match entry.draft.facts:
        case Filter(pass_no=number, volume_in=put_on, volume_out=out):
            left = put_on.amount - out.amount
            return [(f"Left in filter, pass {number}", show(left, Measure.UL))]
        case Decant(heel=heel) if heel:
            return [("Heel left", tidy(heel.written))]
        case Rinse(volume_in=put_on, volume_out=out):
            return [("Rinse", f"{tidy(put_on.written)} in, {tidy(out.written)} out")]
        case MakeUp(used=used):
            return [("Made up with", tidy(used.written))]
        case _:
            return []
