"""Bottling, sending, judging, and complaints.

Guarantees: bottled goods are a lot of their own, counted by the bottle. Refuses: nothing beyond
the rules.
"""

import re

from ledger.domain.amounts.quantity import Measure, Quantity, show
from ledger.domain.entries import Bottle, Complaint, Judge, Labels, Move
from ledger.domain.entries.choices import LotType, MoveAs, Verdict
from ledger.domain.lots.state import name
from ledger.errors import InputError
from ledger.service.desk.act import at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.scene import lot_state

_HASH = re.compile(r"[0-9a-f]{64}", re.ASCII)


def bottle(
    book: Book,
    how: How,
    *,
    source: str,
    pack: str,
    drawn: str | None = None,
    bottles: str | None = None,
    caps: str | None = None,
    best_before: str | None = None,
    fill_check: str | None = None,
    labour: str | None = None,
    code: str | None = None,
) -> Recorded:
    """Fill a lot into bottles; opens a packed lot."""
    with at_desk(book, how) as desk:
        words = desk.words
        filled, bulk = words.pack(pack), words.lot(source)
        total = filled.count * filled.size.amount
        facts = Bottle(
            source=bulk,
            count=filled.count,
            size=filled.size,
            drawn=words.amount_or_none(drawn)
            or Quantity(total, Measure.UL, show(total, Measure.UL)),
            bottles=words.lot_or_none(bottles),
            caps=words.lot_or_none(caps),
            fill_check_mg=words.scaled(fill_check, 1000, "g", "weight of a fill"),
            best_before=words.day(best_before),
            labour_minutes=words.minutes(labour),
        )
        words.done()
        product = name(lot_state(desk.connection, bulk, is_whole=False))
        packed = desk.open_code(code, product, prefix="B")
        return desk.record(facts, opens=(packed, LotType.PACKED, Measure.UEACH))


def labels(
    book: Book,
    how: How,
    *,
    lot: str,
    printed: str,
    used: str | None = None,
    spoiled: str | None = None,
) -> Recorded:
    """Record labels printed, used and spoiled."""
    with at_desk(book, how) as desk:
        words = desk.words
        facts = Labels(
            printed=words.number(printed, 1, "", "number of labels"),
            used=words.whole(used, "number of labels"),
            spoiled=words.whole(spoiled, "number of labels"),
        )
        return desk.record(facts, words.lot(lot))


def send(
    book: Book,
    how: How,
    *,
    lot: str,
    amount: str,
    moved_as: str | None = None,
    party: str | None = None,
    document: str | None = None,
) -> Recorded:
    """Send goods out, write them off, or take them back."""
    with at_desk(book, how) as desk:
        words = desk.words
        facts = Move(
            moved_as=words.needed(moved_as or "sale", MoveAs, "way of sending"),
            amount=words.pieces(amount),
            party=words.text_or_none(party, "name of who gets it"),
            document=words.text_or_none(document, "document"),
        )
        return desk.record(facts, words.lot(lot))


def judge(book: Book, how: How, *, lot: str, verdict: str) -> Recorded:
    """Hold, release or reject a lot."""
    with at_desk(book, how) as desk:
        facts = Judge(desk.words.needed(verdict, Verdict, "verdict"))
        return desk.record(facts, desk.words.lot(lot))


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
) -> Recorded:
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
