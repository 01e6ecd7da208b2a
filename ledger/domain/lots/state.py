"""What the book knows of one lot at a moment, folded from its entries in force.

Guarantees: what is folded here is told by `Lot` in the same words as where lots are read many at
once. Refuses: to guess; what is not known is None.
"""

from collections.abc import Iterable
from datetime import date, datetime

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure, Quantity, mass_from_volume, volume_from_mass
from ledger.domain.entries import (
    Add,
    Bottle,
    Entry,
    Facts,
    FactsT,
    Filter,
    Finish,
    Judge,
    Look,
    MakeUp,
    Material,
    Measurement,
    Opened,
    Receipt,
    Rest,
    Rinse,
    Start,
    entries_of,
)
from ledger.domain.entries.choices import (
    FoodGrade,
    MaterialKind,
    Measured,
    MoveAs,
    Purpose,
    RinseTo,
)
from ledger.domain.lots.dates import Dates
from ledger.domain.lots.lot import AT_FIRST, Lot, Stand, Status, filled_from, name_of, status_of

STAYS_IN_THE_CAKE = frozenset({MaterialKind.CLARIFIER, MaterialKind.FILTER})
"""Kinds of material that a filter keeps back, so they never add to what is in a lot."""

NO_DATES = Dates()
"""What is known of the dates of a lot that was not looked through."""
GOES_TO_PEOPLE = frozenset({MoveAs.SALE, MoveAs.SAMPLE, MoveAs.TASTING, MoveAs.ON_RETURN})
"""Moves by which somebody may drink it."""


class LotState(Struct, frozen=True):
    """A lot with its entries in force, as rules see it."""

    seq: int
    """Number of the entry that opened it."""
    opened: Opened
    """Its code, type and measure."""
    entries: tuple[Entry, ...]
    """Its entries in force, by when they happened."""
    on_hand: int
    """What is there now, in its measure."""
    on_hand_then: int
    """What was there just before the moment of the entry being made."""
    solids_mg: int = 0
    """Mass added since its volume was last measured of which nobody knows what it fills."""
    is_reckoned: bool = False
    """Whether what is there now is the volume reckoned for a mixture, not measured since."""
    was_reckoned: bool = False
    """Whether what was there then is such a volume."""
    material: Material | None = None
    """What it is made of, for a received lot."""
    dates: Dates = NO_DATES
    """Its best-before date, never later than those of what it is made of, and how it keeps."""
    barred_inputs: tuple[str, ...] = ()
    """Codes of lots it is made of that are held, rejected or recalled."""
    made_from: frozenset[int] = frozenset()
    """Numbers of itself and all lots it is made of."""
    bulk: "LotState | None" = None
    """The lot it was filled from, for a packed lot."""
    reckoned_mg_per_l: int | None = None
    """Its density in mg/L as its replay has it, where that was asked for and follows."""

    @property
    def code(self) -> str:
        """Its code."""
        return self.opened.code

    @property
    def best_before(self) -> date | None:
        """The earliest date of itself and all that it is made of."""
        return self.dates.best_before

    @property
    def measure(self) -> Measure:
        """In what it is counted."""
        return self.opened.measure


def opener(state: LotState) -> Entry | None:
    """Return the entry in force that opened the lot; None when it was struck."""
    return next((entry for entry in state.entries if entry.stands_for == state.seq), None)


def latest(state: LotState, facts_class: type[FactsT]) -> FactsT | None:
    """Return the facts of the lot's latest entry of a kind, or None."""
    for entry in reversed(state.entries):
        facts = entry.draft.facts
        if isinstance(facts, facts_class):
            return facts
    return None


def has_before(state: LotState, facts_class: type[Facts], moment: datetime) -> bool:
    """Return whether the lot has an entry of a kind that happened at `moment` or before."""
    return any(e.draft.happened.at <= moment for e in entries_of(state.entries, facts_class))


def name(state: LotState) -> str:
    """Return what the lot is, for people."""
    first = opener(state)
    what = size = ""
    match first.facts if first else None:
        case Receipt(material=material):
            what = state.material.name if state.material else material
        case Start(product=product):
            what = product
        case Bottle(size=quantity):
            what, size = name(state.bulk) if state.bulk else "", quantity.written
    return name_of(state.opened.lot_type, what, size, is_struck=first is None)


def status(state: LotState) -> Status:
    """Return where the lot stands."""
    return status_of(
        state.opened.lot_type, stand_of(state.entries), is_struck=opener(state) is None
    )


def stand_of(entries: Iterable[Entry]) -> Stand:
    """Return how a lot stands after entries about it, by when they happened."""
    stand = AT_FIRST
    for entry in entries:
        match entry.draft.facts:
            case Judge(verdict=verdict):
                stand = stand.judged(verdict)
            case Finish():
                stand = stand.finished()
            case Add() | MakeUp() | Rinse(went_to=RinseTo.BATCH):
                stand = stand.opened_again()
            case _:
                pass
    return stand


def is_finished(state: LotState) -> bool:
    """Return whether the lot's making ended and nothing went in since."""
    return stand_of(state.entries).is_finished


def in_brief(state: LotState) -> Lot:
    """Return the lot as lists and traces tell it, with the best-before date that is reckoned."""
    first, look = opener(state), latest(state, Look)
    lot = Lot(
        seq=state.seq,
        code=state.code,
        lot_type=state.opened.lot_type,
        measure=state.measure,
        opened_at=first.draft.happened if first else None,
        name=name(state),
        status=status(state),
        on_hand=state.on_hand,
        is_reckoned=state.is_reckoned,
        best_before=state.best_before,
        grade=look.grade if look else None,
    )
    match first.facts if first else None:
        case Receipt() as receipt:
            return _received(lot, receipt, state.material)
        case Start(product=product, product_kind=kind):
            return replace(lot, product=product, product_kind=kind)
        case Bottle() if state.bulk:
            return filled_from(lot, in_brief(state.bulk))
        case _:
            return lot


def _received(lot: Lot, receipt: Receipt, material: Material | None) -> Lot:
    return replace(
        lot,
        material=receipt.material,
        sort=material.sort if material else None,
        supplier=receipt.supplier,
        supplier_lot=receipt.supplier_lot,
    )


def density_mg_per_l(state: LotState) -> int | None:
    """Return the lot's density in mg/L.

    As it is replayed, so that a weight leads to a volume and back; else as measured, as received or
    as its material's.
    """
    if state.reckoned_mg_per_l:
        return state.reckoned_mg_per_l
    for entry in reversed(state.entries):
        facts = entry.facts
        # Its reading is in millionths of a g/mL, which are mg/L.
        if isinstance(facts, Measurement) and facts.what is Measured.DENSITY:
            return facts.reading_micro
    receipt = latest(state, Receipt)
    if receipt and receipt.density_mg_per_l:
        return receipt.density_mg_per_l
    return state.material.density_mg_per_l if state.material else None


def is_liquid(state: LotState) -> bool:
    """Return whether the lot is counted by volume, or weighed and known to fill one."""
    return state.measure is Measure.UL or bool(state.reckoned_mg_per_l)


def in_measure_of(state: LotState, amount: Quantity) -> int | None:
    """Return an amount in the lot's own measure, by its density; None when that is not known."""
    return in_measure(amount, state.measure, density_mg_per_l(state))


def in_measure(amount: Quantity, measure: Measure, density: int | None) -> int | None:
    """Return an amount in a measure.

    Args:
        amount: The amount.
        measure: The measure it is wanted in.
        density: Density in mg/L; None when it is not known.

    Returns:
        The amount, rounded half to even; None when nothing known leads from measure to measure.
    """
    if amount.measure is measure:
        return amount.amount
    if density is None or Measure.UEACH in (amount.measure, measure):
        return None
    if amount.measure is Measure.MG:
        return volume_from_mass(amount.amount, density)
    return mass_from_volume(amount.amount, density)


def food_grade(state: LotState) -> FoodGrade:
    """Return whether its papers say the lot is fit for food: its own, else its material's."""
    receipt = latest(state, Receipt)
    if receipt and receipt.food_grade:
        return receipt.food_grade
    return state.material.food_grade if state.material else FoodGrade.UNKNOWN


def is_trial(state: LotState) -> bool:
    """Return whether the lot is a trial batch, or was filled from one."""
    start = latest(state.bulk or state, Start)
    return start is not None and start.purpose is Purpose.TRIAL


def open_rest(state: LotState) -> Entry[Rest] | None:
    """Return the entry of the rest that goes on, or None."""
    rests = list(entries_of(state.entries, Rest))
    # A rest that was begun and then ended is two entries, of which the second names the first.
    began = {rest.facts.began for rest in rests}
    going_on = (r for r in reversed(rests) if not r.facts.ended_at and r.stands_for not in began)
    return next(going_on, None)


def finished_at(lot: LotState) -> datetime | None:
    """Return when the making of a lot ended, or None."""
    ends = [entry.draft.happened.at for entry in entries_of(lot.entries, Finish)]
    return ends[-1] if ends else None


def passes(state: LotState) -> int:
    """Return how many filter passes the lot has had."""
    return sum(1 for _ in entries_of(state.entries, Filter))


def last_look(state: LotState) -> Look | None:
    """Return the latest look at the lot, or at the bulk it was filled from."""
    look = latest(state, Look)
    return look or (last_look(state.bulk) if state.bulk else None)


def most_it_can_hold_ul(state: LotState) -> int:
    """Return the greatest volume the lot can have had then, in microlitres.

    The volume of the mixture, and at most 1 mL for each gram of solid of which it is not known what
    it fills: every solid of the trade is denser than water (common practice, no source).
    """
    return state.on_hand_then + state.solids_mg


def is_past_date(state: LotState, day: date) -> bool:
    """Return whether `day` is after the lot's best-before date."""
    return state.best_before is not None and day > state.best_before
