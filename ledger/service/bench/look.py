"""Look: how clear a lot was, and what of it was looked at.

Guarantees: it was looked at neat unless something else is said. Refuses: flags that no look has.
"""

from ledger.domain.entries import Look
from ledger.domain.entries.choices import Grade, LookedAt
from ledger.errors import InputError
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead

FLAGS = ("ring", "louche", "sediment", "floc", "crystals")
"""What a look may find besides the grade."""


@act
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
    with at_desk(book, how, Ahead(lot)) as desk:
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
