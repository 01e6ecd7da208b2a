"""Measure: an instrument's reading of a lot, in the unit of what is measured.

Guarantees: the raw reading is kept, and as it was written too. Refuses: to correct it for its
temperature.
"""

from ledger.domain.entries import Measurement
from ledger.domain.entries.choices import Measured
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead

_UNITS = {
    Measured.BRIX: "°Bx",
    Measured.ABV: "%",
    Measured.DENSITY: "g/mL",
    Measured.PH: "",
    Measured.TEMPERATURE: "°C",
    Measured.WEIGHT: "g",
}


@act
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
    with at_desk(book, how, Ahead(lot)) as desk:
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
