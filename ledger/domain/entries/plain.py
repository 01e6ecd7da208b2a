"""Entries as plain values and back: what is hashed, and what is read from what was hashed.

Guarantees: `entry_from_plain(entry_to_plain(e)) == e`, without the details that stand beside the
text; absent values are left out, never null.
Refuses: unknown kinds and fields, and values of another type than their field has, by raising
KeyError, TypeError or ValueError to the caller that verifies.
"""

import json
from collections.abc import Mapping
from datetime import date, datetime
from enum import StrEnum
from functools import lru_cache
from typing import Any, TypeVar

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import FACTS
from ledger.domain.entries.canonical import canonical_text, read_canonical
from ledger.domain.entries.choices import LotType, Origin, Place, Precision
from ledger.domain.entries.fields import FieldSpec, specs
from ledger.domain.entries.spine import Draft, Entry, Facts, Level, Opened, Posting, When
from ledger.errors import LedgerError

UNREADABLE = (
    LedgerError,
    ArithmeticError,
    AttributeError,
    LookupError,
    RecursionError,
    TypeError,
    ValueError,
)
"""What reading a text that the book never wrote may raise."""
ValueT = TypeVar("ValueT")
VERSION = 1
"""Version of the canonical form, inside the hashed bytes."""

Plain = dict[str, Any]
"""A JSON object."""
_BY_NAME: dict[type, dict[str, FieldSpec]] = {}


def instant_text(moment: datetime) -> str:
    """Return a UTC instant as text of fixed width.

    >>> instant_text(read_instant('2026-03-02T09:00:00Z'))
    '2026-03-02T09:00:00Z'
    """
    return f"{moment.isoformat()[:19]}Z"


def read_instant(text: str) -> datetime:
    """Return the UTC instant that `instant_text` wrote."""
    return datetime.fromisoformat(text)


def entry_text(entry: Entry) -> str:
    """Return the canonical text of an entry, the text that is hashed."""
    return canonical_text(entry_to_plain(entry))


def read_entry(body: str) -> Entry:
    """Return the entry whose canonical text is `body`."""
    return entry_from_plain(read_canonical(body))


@lru_cache(maxsize=2048)
def kept_entry(body: str) -> Entry:
    """Return the entry of a text that the book keeps; those read lately are remembered.

    That it is canonical was so when it was written, and is for whoever verifies the book to say.
    """
    return entry_from_plain(json.loads(body))


def entry_to_plain(entry: Entry) -> Plain:
    """Return an entry as a JSON object."""
    draft = entry.draft
    plain: Plain = {
        "v": VERSION,
        "seq": entry.seq,
        "kind": entry.kind,
        "stands_for": entry.stands_for,
        "recorded_at": instant_text(entry.recorded_at),
        "happened_at": instant_text(draft.happened.at),
        "offset_min": draft.happened.offset_min,
        "precision": str(draft.happened.precision),
        "origin": str(draft.origin),
        "facts": facts_to_plain(draft.facts),
    }
    for name in ("lot", "by", "sheet", "reason", "corrects"):
        if (value := getattr(draft, name)) is not None:
            plain[name] = value
    if draft.opens:
        plain["opens"] = {
            "code": draft.opens.code,
            "lot_type": str(draft.opens.lot_type),
            "measure": str(draft.opens.measure),
        }
    if entry.postings:
        plain["postings"] = [_posting_to_plain(posting) for posting in entry.postings]
    if entry.level:
        plain["level"] = {"lot": entry.level.lot, "amount": entry.level.amount}
    return plain


def entry_from_plain(plain: Mapping[str, Any]) -> Entry:
    """Return the entry that a JSON object of `entry_to_plain` describes."""
    opens, level = plain.get("opens"), plain.get("level")
    draft = Draft(
        facts=facts_from_plain(plain["kind"], plain["facts"]),
        lot=_or_none(str, plain.get("lot")),
        happened=When(
            read_instant(plain["happened_at"]),
            _of(int, plain["offset_min"]),
            Precision(plain["precision"]),
        ),
        by=_or_none(str, plain.get("by")),
        origin=Origin(plain["origin"]),
        sheet=_or_none(str, plain.get("sheet")),
        reason=_or_none(str, plain.get("reason")),
        corrects=_or_none(int, plain.get("corrects")),
        opens=opens
        and Opened(_of(str, opens["code"]), LotType(opens["lot_type"]), Measure(opens["measure"])),
    )
    return Entry(
        seq=_of(int, plain["seq"]),
        draft=draft,
        recorded_at=read_instant(plain["recorded_at"]),
        stands_for=_of(int, plain["stands_for"]),
        postings=tuple(_posting_from_plain(posting) for posting in plain.get("postings", ())),
        level=level and Level(_of(str, level["lot"]), _of(int, level["amount"])),
    )


def _of(kind: type[ValueT], value: Any) -> ValueT:  # noqa: ANN401 - JSON has no type
    """Return a value if it is of a kind and of no other; True is not 1."""
    if type(value) is not kind:
        raise TypeError(f"{kind.__name__} was expected.")
    return value


def _or_none(kind: type[ValueT], value: Any) -> ValueT | None:  # noqa: ANN401
    return None if value is None else _of(kind, value)


def facts_to_plain(facts: Struct) -> Plain:
    """Return the facts of an entry, or one of their child rows, as a JSON object."""
    plain: Plain = {}
    is_bare = has_commitment(facts)
    for spec in specs(type(facts)):
        if is_bare and spec.is_beside:
            continue
        value = getattr(facts, spec.name)
        if spec.is_many:
            if value:
                plain[spec.name] = [facts_to_plain(row) for row in value]
        elif value is not None:
            plain[spec.name] = _value_to_plain(value)
    return plain


def has_commitment(facts: Struct) -> bool:
    """Tell whether facts have a commitment to their details, which then stand beside the text."""
    return getattr(facts, "commitment", None) is not None


def facts_from_plain(kind: str, plain: Mapping[str, Any]) -> Facts:
    """Return the facts of the named kind that a JSON object describes."""
    return FACTS[kind](**_fields_from_plain(FACTS[kind], plain))


def _fields_from_plain(facts_class: type, plain: Mapping[str, Any]) -> Plain:
    if facts_class not in _BY_NAME:
        _BY_NAME[facts_class] = {spec.name: spec for spec in specs(facts_class)}
    known = _BY_NAME[facts_class]
    return {name: _value_from_plain(known[name], value) for name, value in plain.items()}


def _value_to_plain(value: object) -> object:
    if isinstance(value, Quantity):
        return {
            "amount": value.amount,
            "measure": str(value.measure),
            "written": value.written,
        }
    if isinstance(value, datetime):
        return instant_text(value)
    if isinstance(value, date):
        return value.isoformat()
    return str(value) if isinstance(value, StrEnum) else value


def _value_from_plain(spec: FieldSpec, value: Any) -> object:  # noqa: ANN401 - JSON has no type
    if spec.is_many:
        return tuple(spec.shape(**_fields_from_plain(spec.shape, row)) for row in value)
    if spec.shape is Quantity:
        amount, written = _of(int, value["amount"]), _of(str, value["written"])
        return Quantity(amount, Measure(value["measure"]), written)
    if spec.shape is datetime:
        return read_instant(value)
    if spec.shape is date:
        return date.fromisoformat(value)
    is_word = issubclass(spec.shape, StrEnum)
    return spec.shape(value) if is_word else _of(spec.shape, value)


def _posting_to_plain(posting: Posting) -> Plain:
    plain: Plain = {"taken": posting.taken, "given": posting.given}
    for name in ("source", "target"):
        if (value := getattr(posting, name)) is not None:
            plain[name] = value
    if posting.place is not None:
        plain["place"] = str(posting.place)
    return plain


def _posting_from_plain(plain: Mapping[str, Any]) -> Posting:
    place = plain.get("place")
    return Posting(
        _or_none(str, plain.get("source")),
        _or_none(str, plain.get("target")),
        Place(place) if place else None,
        _of(int, plain["taken"]),
        _of(int, plain["given"]),
    )
