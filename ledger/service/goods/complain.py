"""Complain: what a customer says of a lot.

Guarantees: of a photo its file's name and its hash are kept.
"""

import re

from ledger.domain.entries import Complaint
from ledger.errors import InputError
from ledger.service.desk.act import at_desk
from ledger.service.desk.book import Book, How, Recorded

_HASH = re.compile(r"[0-9a-f]{64}", re.ASCII)


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
) -> Recorded[Complaint]:
    """Record a complaint about a lot; of a photo its file's name and its hash are kept."""
    with at_desk(book, how) as desk:
        reader = desk.words
        facts = Complaint(
            symptom=reader.text(symptom, "symptom"),
            party=reader.text_or_none(party, "name of who complains"),
            opened=reader.text_or_none(opened, "time of opening"),
            stored=reader.text_or_none(stored, "place of storage"),
            mixed=reader.text_or_none(mixed, "way of mixing"),
            photo=reader.text_or_none(photo, "name of the photo"),
            photo_sha256=reader.read(lambda: _sha256(photo_sha256), None),
            words=reader.text_or_none(words, "words"),
        )
        return desk.record(facts, reader.lot(lot))


def _sha256(text: str | None) -> str | None:
    plain = (text or "").strip().lower()
    if plain and not _HASH.fullmatch(plain):
        raise InputError(
            f'"{text}" is not a SHA-256 hash.',
            "It has 64 figures and letters from 0 to 9 and a to f.",
        )
    return plain or None
