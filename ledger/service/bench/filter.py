"""Clearing a batch: filter, rinse, decant; and looking at it and measuring it.

Guarantees: pass numbers are counted by the book. Refuses: nothing beyond the rules.
"""

from ledger.domain.amounts.quantity import Measure, Quantity, show
from ledger.domain.entries import Decant, Filter, Look, Measurement, Rinse
from ledger.domain.entries.choices import (
    Cake,
    Grade,
    LookedAt,
    LotType,
    Measured,
    RinseTo,
    VacuumReference,
)
from ledger.domain.lots.state import LotState, passes
from ledger.errors import InputError, RefusedError
from ledger.service.desk.act import at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.reader import read_scaled
from ledger.service.desk.scene import lot_state
from ledger.store.read.queries import Moment

Pores = tuple[int | None, int | None]
"""The finer and the coarser end of a pore size, in nanometres."""
NO_PORES: Pores = (None, None)
FLAGS = ("ring", "louche", "sediment", "floc", "crystals")
"""What a look may find besides the grade."""
_UNITS = {
    Measured.BRIX: "°Bx",
    Measured.ABV: "%",
    Measured.DENSITY: "g/mL",
    Measured.PH: "",
    Measured.TEMPERATURE: "°C",
    Measured.WEIGHT: "g",
}


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
) -> Recorded:
    """Record one pass through a filter."""
    with at_desk(book, how) as desk:
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
            medium=words.text(medium, "filter medium"),
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


def rinse(
    book: Book,
    how: How,
    *,
    lot: str,
    source: str,
    volume_in: str,
    volume_out: str,
    went_to: str,
    code: str | None = None,
) -> Recorded:
    """Rinse the cake; kept apart, the rinse liquor opens a lot of its own."""
    with at_desk(book, how) as desk:
        words = desk.words
        to = words.needed(went_to, RinseTo, "place where the rinse went")
        facts = Rinse(
            source=words.lot(source),
            volume_in=words.amount(volume_in),
            volume_out=words.amount(volume_out),
            went_to=to,
        )
        rinsed = words.lot(lot)
        if to is not RinseTo.APART:
            return desk.record(facts, rinsed)
        apart = desk.open_code(code, "Rinse liquor")
        return desk.record(facts, rinsed, opens=(apart, LotType.RINSE, Measure.UL))


def decant(book: Book, how: How, *, lot: str, drawn: str, heel: str | None = None) -> Recorded:
    """Draw the clear liquid off its sediment."""
    with at_desk(book, how) as desk:
        words = desk.words
        facts = Decant(drawn=words.amount(drawn), heel=words.amount_or_none(heel))
        return desk.record(facts, words.lot(lot))


def look(
    book: Book,
    how: How,
    *,
    lot: str,
    grade: str,
    of: str | None = None,
    dilution: str | None = None,
    ntu: str | None = None,
    instrument: str | None = None,
    zeroed_on: str | None = None,
    age: str | None = None,
    temp: str | None = None,
    flags: str | None = None,
    words: str | None = None,
) -> Recorded:
    """Record how clear a lot looked, and what was looked at."""
    with at_desk(book, how) as desk:
        reader = desk.words
        seen = reader.read(lambda: read_flags(flags), frozenset[str]())
        facts = Look(
            grade=reader.needed(grade, Grade, "grade of clarity"),
            looked_at=reader.needed(of or "neat", LookedAt, "thing to look at"),
            dilution=reader.text_or_none(dilution, "dilution"),
            ntu_milli=reader.scaled(ntu, 1000, "NTU", "turbidity"),
            instrument=reader.text_or_none(instrument, "instrument"),
            zeroed_on=reader.text_or_none(zeroed_on, "zero of the instrument"),
            age_minutes=reader.minutes(age),
            temp_mdegc=reader.scaled(temp, 1000, "°C", "temperature"),
            words=reader.text_or_none(words, "words"),
            **{flag: flag in seen for flag in FLAGS},
        )
        return desk.record(facts, reader.lot(lot))


def read_flags(text: str | None) -> frozenset[str]:
    """Return the flags named in a list with commas.

    Raises:
        InputError: One is not a flag.
    """
    named = frozenset(flag.strip().lower() for flag in (text or "").split(",") if flag.strip())
    for flag in sorted(named - set(FLAGS)):
        raise InputError(f'"{flag}" is not a flag of a look.', f"Choose from: {', '.join(FLAGS)}.")
    return named


def measure(
    book: Book,
    how: How,
    *,
    lot: str,
    what: str,
    reading: str,
    temp: str | None = None,
    instrument: str | None = None,
) -> Recorded:
    """Record an instrument's raw reading."""
    with at_desk(book, how) as desk:
        words = desk.words
        kind = words.needed(what, Measured, "thing to measure")
        unit = _UNITS[kind]
        facts = Measurement(
            what=kind,
            reading_micro=words.number(reading, 1_000_000, unit, str(kind)),
            unit=unit or "pH",
            written=words.text(reading, "reading"),
            temp_mdegc=words.scaled(temp, 1000, "°C", "temperature"),
            instrument=words.text_or_none(instrument, "instrument"),
        )
        return desk.record(facts, words.lot(lot))
