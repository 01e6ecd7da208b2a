"""What an entry moves: its postings and the level it measures.

Guarantees: a pure function of the draft and the lots around it; the one place where facts become
movements.
"""

from fractions import Fraction

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import (
    Add,
    Bottle,
    Count,
    Decant,
    Draft,
    Filter,
    Finish,
    Labels,
    Level,
    MakeUp,
    Move,
    Posting,
    Receipt,
    Rinse,
)
from ledger.domain.entries.choices import MoveAs, Place, RinseTo
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import LotState, in_measure_of, latest

EACH = 1_000_000
"""One counted thing in its smallest unit."""


def movements(draft: Draft, scene: Scene) -> tuple[tuple[Posting, ...], Level | None]:
    """Return the postings of a draft, in order, and the level it states."""
    lot = draft.opens.code if draft.opens else draft.lot
    if lot is None:
        return (), None
    match draft.facts:
        case Receipt(amount=amount):
            return (_from(Place.SUPPLIER, lot, amount.amount),), None
        case Add() as facts:
            return (_addition(lot, facts, scene),), None
        case Filter() as facts:
            # What an old cake or a wetting carries nobody measured: a way of the trace without an
            # amount.
            ways = (code for code in (facts.cake_of, facts.wetted_with) if code)
            carried = tuple(Posting(code, lot, None, 0, 0) for code in dict.fromkeys(ways))
            paper = (Posting(facts.paper, lot, None, EACH, 0),) if facts.paper else ()
            return (*carried, *paper), Level(lot, facts.volume_out.amount)
        case Labels(stock=str(stock), printed=printed):
            return (Posting(stock, lot, None, printed * EACH, 0),), None
        case Rinse() as facts:
            return _rinsing(draft, facts, scene), None
        case Decant(drawn=volume) | Finish(volume=volume):
            return (), Level(lot, volume.amount)
        case MakeUp() as facts:
            used = _taken(scene, facts.source, facts.used)
            made_up = Posting(facts.source, lot, None, used, facts.used.amount)
            return (made_up,), Level(lot, facts.volume.amount)
        case Bottle() as facts:
            return _filling(lot, facts, scene), None
        case Move() as facts:
            return (_move(lot, facts),), None
        case Count(amount=amount):
            return (), Level(lot, amount.amount)
        case _:
            return (), None


def _from(place: Place, lot: str, amount: int) -> Posting:
    return Posting(None, lot, place, amount, amount)


def _addition(lot: str, facts: Add, scene: Scene) -> Posting:
    source = scene.source(facts.source)
    taken = (in_measure_of(source, facts.amount) if source else None) or 0
    return Posting(facts.source, lot, None, taken, _volume_of(source, taken) if source else 0)


def _volume_of(source: LotState, taken: int) -> int:
    """Return the volume in µL of what was taken: bottles bring what was filled into them."""
    filled = latest(source, Bottle)
    if filled and source.measure is Measure.UEACH:
        return round(Fraction(filled.drawn.amount * taken, filled.count * EACH))
    return taken if source.measure is Measure.UL else 0


def _taken(scene: Scene, code: str, amount: Quantity) -> int:
    """Return what leaves a lot in its own measure; as given where it has no density to go by."""
    source = scene.source(code)
    own = in_measure_of(source, amount) if source else None
    return amount.amount if own is None else own


def _rinsing(draft: Draft, facts: Rinse, scene: Scene) -> tuple[Posting, ...]:
    rinsed, ran_through = draft.lot, facts.volume_out.amount
    put_on = _taken(scene, facts.source, facts.volume_in)
    if facts.went_to is RinseTo.WASTE:
        return (Posting(facts.source, None, Place.WASTE, put_on, 0),)
    if facts.went_to is RinseTo.BATCH or draft.opens is None:
        return (Posting(facts.source, rinsed, None, put_on, ran_through),)
    apart = draft.opens.code
    return (
        Posting(facts.source, apart, None, put_on, ran_through),
        # What the liquor fetched of the batch nobody measured.
        Posting(rinsed, apart, None, 0, 0),
    )


def _filling(lot: str, facts: Bottle, scene: Scene) -> tuple[Posting, ...]:
    count = facts.count * EACH
    packing = (code for code in (facts.bottles, facts.caps) if code)
    return (
        Posting(facts.source, lot, None, _taken(scene, facts.source, facts.drawn), count),
        *(Posting(code, lot, None, count, 0) for code in packing),
    )


def _move(lot: str, facts: Move) -> Posting:
    amount = facts.amount.amount
    if facts.moved_as is MoveAs.RETURNED:
        return _from(Place.RETURNED, lot, amount)
    return Posting(lot, None, Place(facts.moved_as), amount, 0)
