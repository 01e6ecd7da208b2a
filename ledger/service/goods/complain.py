"""Complain: what a customer says of a lot.

Guarantees: of a photo its file's name and its hash are kept; a time of opening such as "yesterday"
is kept as the day it was; a day is set by which it is to be answered.
"""

import re

from ledger.domain.entries import Complaint
from ledger.domain.entries.choices import Precision
from ledger.errors import InputError, LedgerError
from ledger.service.desk.act import Desk, act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.service.desk.times import read_when

ANSWER_DAYS = 7
"""In how many days a complaint is to be answered when nothing else is said (common practice, no
source)."""
_HASH = re.compile(r"[0-9a-f]{64}", re.ASCII)


@act
def complain(
    book: Book,
    how: How,
    *,
    lot: str,
    symptom: str,
    party: str | None = None,
    opened: str | None = None,
    stored: str | None = None,
    mixed: str | None = None,
    photo: str | None = None,
    photo_sha256: str | None = None,
    words: str | None = None,
    answer_days: str | None = None,
) -> Recorded[Complaint]:
    """Record a complaint about a lot; of a photo its file's name and its hash are kept."""
    with at_desk(book, how, Ahead(lot, is_packed=True, party=party)) as desk:
        reader = desk.words
        facts = Complaint(
            symptom=reader.text(symptom, "symptom"),
            party=reader.text_or_none(party, "name of who complains"),
            opened=reader.text_or_none(_day_meant(desk, opened), "time of opening"),
            stored=reader.text_or_none(stored, "place of storage"),
            mixed=reader.text_or_none(mixed, "way of mixing"),
            photo=reader.text_or_none(photo, "name of the photo"),
            photo_sha256=reader.read(lambda: _sha256(photo_sha256), None),
            words=reader.text_or_none(words, "words"),
            answer_days=reader.whole(answer_days, "number of days") if answer_days else ANSWER_DAYS,
        )
        return desk.record(facts, reader.lot(lot))


def _day_meant(desk: Desk, opened: str | None) -> str | None:
    """Return a time as a date, if it is one; other words, such as "last week", stay as they are."""
    try:
        when = read_when(opened, desk.now, desk.zone) if opened and opened.strip() else None
    except LedgerError:
        return opened
    if when is None:
        return None
    local = when.local()
    return f"{local:%Y-%m-%d}" if when.precision is Precision.DAY else f"{local:%Y-%m-%d %H:%M}"


def _sha256(text: str | None) -> str | None:
    plain = (text or "").strip().lower()
    if plain and not _HASH.fullmatch(plain):
        raise InputError(
            f'"{text}" is not a SHA-256 hash.',
            "It has 64 figures and letters from 0 to 9 and a to f.",
        )
    return plain or None
