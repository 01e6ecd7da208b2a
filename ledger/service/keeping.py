"""Keeping the book: notes, checks, cleaning, counts, corrections and strikes.

Guarantees: a correction is a full new entry of the same kind, with what changed and why; the old
one stays. Refuses: fields that the kind has not got; changes to what a lot is counted in.
"""

from datetime import date, datetime
from enum import StrEnum
from functools import partial
from typing import Any

from msgspec.structs import replace

from ledger.domain.entries import Check, Clean, Count, Draft, Entry, Equipment, Note, Strike
from ledger.domain.fields import SCALES, FieldSpec, scale_ending, specs
from ledger.domain.lots import LotState, in_measure_of
from ledger.domain.quantity import Measure, Quantity, show
from ledger.errors import InputError, RefusedError
from ledger.service.book import Book, How, Recorded
from ledger.service.desk import Desk, at_desk
from ledger.service.scenes import lot_state
from ledger.service.times import read_when
from ledger.service.words import with_article
from ledger.store import queries


def note(book: Book, how: How, *, text: str, lot: str | None = None) -> Recorded:
    """Record free words, about a lot or about nothing in particular."""
    with at_desk(book, how) as desk:
        facts = Note(desk.words.text(text, "note"))
        return desk.record(facts, desk.words.lot_or_none(lot))


def count(book: Book, how: How, *, lot: str, amount: str, tare: str | None = None) -> Recorded:
    """Record what was really there of a lot: counted, measured, or weighed with its vessel."""
    with at_desk(book, how) as desk:
        words = desk.words
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
    if amount.amount == 0:
        return replace(amount, measure=state.measure)
    own = in_measure_of(state, amount)
    if own is None or amount.measure is state.measure:
        return amount
    return Quantity(own, state.measure, show(own, state.measure))


def check(
    book: Book,
    how: How,
    *,
    lot: str | None = None,
    entry: str | None = None,
    words: str | None = None,
) -> Recorded:
    """Record that a lot, or one entry, was checked."""
    with at_desk(book, how) as desk:
        read = desk.words
        if bool(lot) == bool(entry):
            raise InputError(
                "A check is of a lot or of one entry.",
                "Name the lot, or give --entry with the number of the entry.",
            )
        about = _entry(desk, entry) if entry else None
        if entry and about is None:
            raise RefusedError(
                f"There is no entry {_number(entry)} in the book.",
                "pottle journal lists the entries with their numbers.",
            )
        facts = Check(about.seq if about else None, read.text_or_none(words, "words"))
        return desk.record(facts, about.draft.lot if about else read.lot_or_none(lot))


def clean(
    book: Book, how: How, *, vessel: str, method: str, last_held: str | None = None
) -> Recorded:
    """Record that a vessel was cleaned."""
    with at_desk(book, how) as desk:
        read = desk.words
        facts = Clean(
            vessel=read.text(vessel, "vessel"),
            how=read.text(method, "way of cleaning"),
            last_held=read.text_or_none(last_held, "last contents"),
        )
        return desk.record(facts)


def equipment(book: Book, how: How, *, name: str, words: str) -> Recorded:
    """Record that an instrument or vessel was taken into use, checked or set."""
    with at_desk(book, how) as desk:
        read = desk.words
        return desk.record(Equipment(read.text(name, "name"), read.text(words, "finding")))


def strike(book: Book, how: How, *, entry: str) -> Recorded:
    """Strike out an entry that was made by mistake."""
    with at_desk(book, how) as desk:
        old = _entry(desk, entry)
        if old and how.at is None:
            desk.happened = replace(desk.happened, at=max(desk.happened.at, old.draft.happened.at))
        return desk.record(Strike(), lot=old.draft.lot if old else None, corrects=_number(entry))


def correct(book: Book, how: How, *, entry: str, changes: str) -> Recorded:
    """Replace an entry in force by one of the same kind with some fields changed.

    Args:
        book: The book.
        how: Who corrects, and why; `at` corrects when it happened.
        entry: The number of the entry.
        changes: `field=value` pairs with semicolons between, fields named as in the journal.
    """
    with at_desk(book, how) as desk:
        old = _entry(desk, entry)
        if old is None:
            number = _number(entry)
            raise RefusedError(
                f"There is no entry {number} in the book.",
                "pottle journal lists the entries with their numbers.",
            )
        changed = _changes(desk, old, changes, has_time=how.at is not None)
        desk.words.done()
        return desk.append(_replacement(desk, old, changed))


def _replacement(desk: Desk, old: Entry, changed: dict[str, Any]) -> Draft:
    return replace(
        old.draft,
        facts=replace(old.draft.facts, **changed),
        happened=desk.happened if desk.how.at else old.draft.happened,
        by=desk.by,
        origin=desk.origin,
        sheet=desk.sheet or old.draft.sheet,
        reason=desk.reason,
        corrects=old.seq,
    )


def _entry(desk: Desk, text: str) -> Entry | None:
    number = desk.words.read(lambda: _number(text), 0)
    desk.words.done()
    return queries.entry(desk.connection, number)


def _number(text: str) -> int:
    plain = text.strip().removeprefix("#")
    if not (plain.isascii() and plain.isdecimal()) or len(plain) > 15:
        raise InputError(
            f'"{text}" is not the number of an entry.',
            "pottle journal lists the entries with their numbers.",
        )
    return int(plain)


def _changes(desk: Desk, old: Entry, text: str, *, has_time: bool) -> dict[str, Any]:
    by_name = {spec.plain_name.replace("_", "-"): spec for spec in specs(type(old.draft.facts))}
    changed: dict[str, Any] = {}
    for part in (piece.strip() for piece in text.split(";")):
        if not part:
            continue
        name, is_pair, value = part.partition("=")
        spec = by_name.get(name.strip().lower().replace("_", "-"))
        if not is_pair or spec is None or spec.is_many:
            desk.words.errors.append(_no_such_field(old, part, by_name))
        else:
            changed[spec.name] = desk.words.read(
                partial(_value, desk, old, spec, value.strip()), None
            )
    if not changed and not has_time and not desk.words.errors:
        raise InputError(
            f"Nothing to change in entry {old.seq} was given.",
            "Say what is right with --set FIELD=VALUE, or when it happened with --at.",
        )
    return changed


def _no_such_field(old: Entry, part: str, by_name: dict[str, FieldSpec]) -> InputError:
    listed = ", ".join(name for name, spec in by_name.items() if not spec.is_many)
    return InputError(
        f'"{part}" changes nothing that {with_article(old.kind)} entry has.',
        f"Write FIELD=VALUE with one of: {listed or 'no field at all'}.",
    )


def _value(desk: Desk, old: Entry, spec: FieldSpec, text: str) -> object:
    if not text:
        if spec.is_optional:
            return None
        raise InputError(f"The {spec.plain_name} cannot be left empty.", "Give its right value.")
    if spec.shape is Quantity:
        amount = desk.words.pieces(text, may_be_nothing=spec.may_be_nothing)
        return _same_measure(old, spec, amount)
    if spec.refers_to == "lot":
        return desk.words.lot(text)
    if spec.shape is bool:
        return text.lower() in ("yes", "true", "1")
    if spec.shape is int:
        ending = scale_ending(spec.name)
        scale, unit = SCALES[ending] if ending else (1, "")
        return desk.words.scaled(text, scale, unit, spec.plain_name)
    if spec.shape is date:
        return desk.words.day(text)
    if spec.shape is datetime:
        return read_when(text, desk.now, desk.zone).at
    if issubclass(spec.shape, StrEnum):
        return desk.words.needed(text, spec.shape, spec.plain_name)
    return desk.words.text(text, spec.plain_name)


def _same_measure(old: Entry, spec: FieldSpec, amount: Quantity) -> Quantity:
    was: Quantity | None = getattr(old.draft.facts, spec.name)
    opens = old.draft.opens
    if opens and spec.name == "amount" and was and was.measure is not amount.measure:
        raise RefusedError(
            f"{opens.code} is counted in the measure of {was.written}, so it cannot become "
            f"{amount.written}.",
            f"Strike entry {old.seq} and receive it again.",
        )
    if was and amount.amount == 0:
        return replace(amount, measure=was.measure)
    return amount
