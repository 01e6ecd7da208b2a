"""Counting what is really there of a lot.

Guarantees: a count is kept in the measure of its lot, a weight of liquid by the lot's density and
without its vessel. Refuses: weights that leave nothing for the contents to weigh.
"""

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure, Quantity, show
from ledger.domain.entries import Count
from ledger.domain.lots.state import LotState, in_measure_of
from ledger.errors import RefusedError
from ledger.service.account.state import lot_state
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead


@act
def count(book: Book, how: How, *, lot: str, amount: str, tare: str | None = None) -> Recorded:
    """Record what was really there of a lot: counted, measured, or weighed with its vessel."""
    with at_desk(book, how, Ahead(lot, is_packed=True)) as desk:
        words = desk.words
        # With a tare the amount is a weight with its vessel, which is never nothing.
        code, empty = words.lot(lot), words.amount_or_none(tare)
        there = words.pieces(amount, may_be_nothing=not tare)
        words.done()
        net = _without_vessel(there, empty) if empty else there
        state = lot_state(desk.connection, code, is_whole=False)
        return desk.record(Count(_as_counted(state, net)), code)


def _without_vessel(gross: Quantity, empty: Quantity) -> Quantity:
    """Return what is in a vessel, from its weight with and without it."""
    net = gross.amount - empty.amount
    if {gross.measure, empty.measure} != {Measure.MG} or net < 0:
        raise RefusedError(
            f"{gross.written} with the vessel and {empty.written} without it leave no weight.",
            "Give both as weights, the heavier first.",
        )
    return Quantity(net, Measure.MG, show(net, Measure.MG))


def _as_counted(state: LotState, amount: Quantity) -> Quantity:
    """Return an amount in the measure of its lot; a weight and a volume by the lot's density."""
    # Nothing has no unit of its own, and is counted as its lot is.
    if amount.amount == 0:
        return replace(amount, measure=state.measure)
    own = in_measure_of(state, amount)
    if own is None or amount.measure is state.measure:
        return amount
    return Quantity(own, state.measure, show(own, state.measure))
