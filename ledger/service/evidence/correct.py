"""Correct: an entry is replaced by a new one.

Guarantees: a correction is a full new entry of the same kind, with what changed and why; the old
one stays. Refuses: fields that the kind has not got; changes to what a lot is counted in.
"""

from functools import partial
from typing import Any

from msgspec.structs import replace

from ledger.domain.amounts.money import digits_of
from ledger.domain.amounts.scaled import with_article
from ledger.domain.entries import Draft, Entry
from ledger.domain.entries.fields import FieldSpec, specs
from ledger.errors import InputError, RefusedError
from ledger.service.desk.act import Desk, act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.service.desk.numbers import entry_number
from ledger.service.evidence.values import DIGITS, read_value, with_digits
from ledger.store.form.columns import DETAIL_FIELDS
from ledger.store.read.people import PARTY_IN, details


@act
def correct(book: Book, how: How, *, entry: str, changes: str) -> Recorded:
    """Replace an entry in force by one of the same kind with some fields changed.

    Args:
        book: The book.
        how: Who corrects, and why; `at` corrects when it happened.
        entry: The number of the entry.
        changes: `field=value` pairs with semicolons between, fields named as in the journal.
    """
    with at_desk(book, how, _ahead(entry, changes)) as desk:
        old = desk.entry_named(entry)
        if old is None:
            number = entry_number(entry)
            raise RefusedError(
                f"There is no entry {number} in the book.",
                "pottle journal lists the entries with their numbers.",
            )
        changed = _changes(desk, old, changes, has_time=how.at is not None)
        desk.words.done()
        changed |= with_digits(old.facts, changed, digits_of(desk.currency))
        return desk.append(_replacement(desk, old, changed))


def _ahead(entry: str, changes: str) -> Ahead:
    """Return what the words of a correction say ahead of what it will ask."""
    said = {name: value for name, _, value in map(_pair, changes.split(";"))}
    return Ahead(
        entry=entry,
        instead=tuple(value for value in said.values() if "-" in value),  # as a code has it
        checked=said.get("about"),
        party=next((said[name] for name in ("name", *PARTY_IN.values()) if name in said), None),
        also=((details,),) if said.keys() & set(DETAIL_FIELDS) else (),
    )


def _pair(part: str) -> tuple[str, bool, str]:
    """Return the field that a part of the changes names, whether it gives a value, and this."""
    name, is_pair, value = part.partition("=")
    # As people type them: with dashes or low lines, in any letters.
    return name.strip().lower().replace("_", "-"), bool(is_pair), value.strip()


def _replacement(desk: Desk, old: Entry, changed: dict[str, Any]) -> Draft:
    return replace(
        old.draft,
        facts=replace(old.facts, **changed),
        happened=desk.happened if desk.how.at else old.draft.happened,
        # By whom and how is told of the correction; the rest is of what it corrects.
        by=desk.by,
        origin=desk.origin,
        sheet=desk.sheet or old.draft.sheet,
        reason=desk.reason,
        corrects=old.seq,
    )


def _changes(desk: Desk, old: Entry, text: str, *, has_time: bool) -> dict[str, Any]:
    # Without the ending of a unit.
    by_name = {
        spec.plain_name.replace("_", "-"): spec
        for spec in specs(type(old.facts))
        if not (spec.name.endswith(DIGITS) or spec.is_given)
    }
    changed: dict[str, Any] = {}
    for part in (piece.strip() for piece in text.split(";")):
        if not part:
            continue
        name, is_pair, value = _pair(part)
        spec = by_name.get(name)
        if not is_pair or spec is None or spec.is_many:
            desk.words.errors.append(_no_such_field(old, part, by_name))
        else:
            changed[spec.name] = desk.words.read(partial(read_value, desk, old, spec, value), None)
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
