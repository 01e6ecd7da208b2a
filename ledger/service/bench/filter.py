"""Filter: one pass of a batch through a filter.

Guarantees: pass numbers are counted by the book.
"""

from ledger.domain.amounts.quantity import Measure, Quantity, show
from ledger.domain.amounts.scaled import read_scaled
from ledger.domain.entries import Filter
from ledger.domain.entries.choices import Cake, Medium, VacuumReference
from ledger.domain.lots.state import LotState, passes
from ledger.errors import InputError, RefusedError
from ledger.service.account.state import lot_state
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.store.read.queries import Moment

Pores = tuple[int | None, int | None]
"""The finer and the coarser end of a pore size, in nanometres."""


NO_PORES: Pores = (None, None)


@act
def filter_(
    book: Book,
    how: How,
    *,
    lot: str,
    medium: str,
    volume_out: str,
    volume_in: str | None = None,
    pore: str | None = None,
    vacuum: str | None = None,
    absolute: str | None = None,
    temp: str | None = None,
    cake: str | None = None,
    cake_of: str | None = None,
    precoat: str | None = None,
    first_runnings: str | None = None,
    minutes: str | None = None,
    in_cake: str | None = None,
    paper: str | None = None,
    wetted_with: str | None = None,
) -> Recorded:
    """Record one pass through a filter."""
    with at_desk(book, how, Ahead(lot)) as desk:
        words = desk.words
        code, put_on = words.lot(lot), words.amount_or_none(volume_in)
        finer, coarser = words.read(lambda: read_pores(pore), NO_PORES)
        reference = VacuumReference.ABSOLUTE if absolute else VacuumReference.BELOW_ATMOSPHERE
        state = (
            lot_state(desk.connection, code, Moment(desk.happened.at), is_whole=False)
            if code
            else None
        )
        facts = Filter(
            pass_no=passes(state) + 1 if state else 1,
            medium=str(words.needed(medium, Medium, "filter medium")),
            volume_in=put_on or words.read(lambda: _all_there(state), Quantity(1, Measure.UL, "")),
            volume_out=words.amount(volume_out),
            pore_low_nm=finer,
            pore_high_nm=coarser,
            cake=words.one_of(cake, Cake, "cake"),
            cake_of=words.lot_or_none(cake_of),
            precoat=words.amount_or_none(precoat),
            vacuum_pa=words.scaled(vacuum, 1000, "kPa", "vacuum"),
            vacuum_reference=reference if vacuum else None,
            temp_mdegc=words.scaled(temp, 1000, "°C", "temperature"),
            first_runnings=words.amount_or_none(first_runnings),
            minutes=words.minutes(minutes),
            in_cake=words.amount_or_none(in_cake),
            paper=words.lot_or_none(paper),
            wetted_with=words.lot_or_none(wetted_with),
        )
        return desk.record(facts, code)


def _all_there(state: LotState | None) -> Quantity:
    if state and state.solids_mg:
        raise InputError(
            f"{show(state.solids_mg, Measure.MG)} of solids went into {state.code} since its "
            "volume was last measured, so the book cannot tell how much went onto the filter.",
            "Say how much with --in.",
        )
    there = max(state.on_hand_then, 1) if state else 1
    return Quantity(there, Measure.UL, show(there, Measure.UL))


def read_pores(text: str | None) -> Pores:
    """Return the finer and coarser end of a pore size in nanometres, from "20" or "20-25 µm".

    Raises:
        InputError: It is not of that form.
        RefusedError: It is not above zero.
    """
    if not text:
        return NO_PORES
    ends = text.replace("–", "-").split("-")
    # The micro sign and the Greek mu are two letters that look alike.
    plain = [end.lower().replace("µm", "").replace("um", "").replace("μm", "") for end in ends]
    if len(plain) > 2:
        raise InputError(f'"{text}" is not a pore size.', "Write it in µm as 20 or 20-25.")
    sizes = [read_scaled(end.strip(), 1000, "µm", "pore size") for end in plain]
    if min(sizes) <= 0:
        raise RefusedError(
            f"A pore size must be more than zero, and {text} is not.",
            "Read it on the filter or its box, in µm.",
        )
    return min(sizes), max(sizes)
