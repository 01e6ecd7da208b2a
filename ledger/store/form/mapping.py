"""Entries as rows: the one mapping between the entry classes and the tables.

Guarantees: `rows(entry)` are exactly the rows that an append inserts and that verification
expects to find. Refuses: to read; entries are read from their canonical text.
"""

from collections.abc import Callable, Mapping
from datetime import date, datetime
from enum import StrEnum
from typing import Any

from msgspec import Struct

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries import Entry, Facts, Material, Person
from ledger.domain.entries.fields import specs
from ledger.domain.entries.plain import has_commitment, instant_text
from ledger.store.form.columns import LISTS

Cells = tuple[Any, ...]
"""The cells of a row, in the order of the table's columns."""
LotIds = Mapping[str, int]
"""Lot numbers by code."""
Writer = Callable[[Any], Cells]
"""Gives the cells of one field's value."""
_WRITERS: dict[type, tuple[tuple[str, Writer | None, bool], ...]] = {}


def rows(
    entry: Entry, body: str, leaf: bytes, lot_ids: LotIds, is_first_of: Callable[[str, str], bool]
) -> list[tuple[str, Cells]]:
    """Return the rows of an entry by table, in the order they can be inserted.

    Args:
        entry: The entry.
        body: Its canonical text.
        leaf: The hash of that text.
        lot_ids: Numbers of the lots it speaks of, without the one it opens.
        is_first_of: Tells whether a person's or material's key is new: (kind, key).
    """
    draft, seq = entry.draft, entry.seq
    ids = lot_ids
    made: list[tuple[str, Cells]] = []
    if (opens := draft.opens) and draft.corrects is None:
        # A lot has the number of the entry that opens it.
        ids = {**lot_ids, opens.code: seq}
        made.append(("lot", (seq, opens.code, str(opens.lot_type), str(opens.measure))))
    made += _key_rows(entry, is_first_of)
    made.append(("entry", _spine_cells(entry, body, leaf, ids)))
    made += _facts_rows(seq, draft.facts)
    for line, posting in enumerate(entry.postings, start=1):
        source = ids[posting.source] if posting.source else None
        target = ids[posting.target] if posting.target else None
        place = str(posting.place) if posting.place else None
        cells = (seq, line, source, target, place, posting.taken, posting.given)
        made.append(("posting", cells))
    if entry.level:
        made.append(("level", (seq, ids[entry.level.lot], entry.level.amount)))
    return made


def _key_rows(entry: Entry, is_first_of: Callable[[str, str], bool]) -> list[tuple[str, Cells]]:
    facts = entry.facts
    if isinstance(facts, Person) and is_first_of("person", facts.initials):
        return [("person_key", (facts.initials, entry.seq))]
    if isinstance(facts, Material) and is_first_of("material", facts.code):
        return [("material_key", (facts.code, entry.seq))]
    return []


def _spine_cells(entry: Entry, body: str, leaf: bytes, ids: LotIds) -> Cells:
    draft = entry.draft
    return (
        entry.seq,
        entry.kind,
        ids[draft.lot] if draft.lot else None,
        instant_text(draft.happened.at),
        draft.happened.offset_min,
        str(draft.happened.precision),
        instant_text(entry.recorded_at),
        str(draft.origin),
        draft.sheet,
        draft.by,
        draft.corrects,
        entry.stands_for,
        draft.reason,
        body,
        leaf,
    )


def _facts_rows(seq: int, facts: Facts) -> list[tuple[str, Cells]]:
    kind = facts.KIND
    made = [(kind, (seq, kind, *_cells(facts)))]
    for name, table in LISTS[kind]:
        made += [
            (table, (seq, line, *_cells(child)))
            for line, child in enumerate(getattr(facts, name), start=1)
        ]
    return made


def _cells(facts: Struct) -> list[Any]:
    cells: list[Any] = []
    is_bare = has_commitment(facts)
    for name, write, is_beside in _writers(type(facts)):
        value = None if is_bare and is_beside else getattr(facts, name)
        if write:
            cells += write(value)
        else:
            cells.append(value)
    return cells


def _writers(facts_class: type) -> tuple[tuple[str, Writer | None, bool], ...]:
    """Return the fields of a class that are no lists; None: stored as they are.

    The last tells whether it may stand beside the text.
    """
    # Asked for every row, so worked out once a class.
    if facts_class not in _WRITERS:
        _WRITERS[facts_class] = tuple(
            (spec.name, _writer(spec.shape), spec.is_beside)
            for spec in specs(facts_class)
            if not spec.is_many
        )
    return _WRITERS[facts_class]


def _writer(shape: type) -> Writer | None:
    if shape is Quantity:
        return _quantity_cells
    if shape is bool:
        return lambda value: (None if value is None else int(value),)
    if shape is datetime:
        return lambda value: (value and instant_text(value),)
    if shape is date:
        return lambda value: (value and value.isoformat(),)
    return (lambda value: (value and str(value),)) if issubclass(shape, StrEnum) else None


def _quantity_cells(value: Quantity | None) -> Cells:
    return (value.amount, str(value.measure), value.written) if value else (None, None, None)


def lot_codes(entry: Entry) -> frozenset[str]:
    """Return the codes of all lots an entry's rows refer to by number, but the one it opens."""
    draft = entry.draft
    named = {draft.lot, entry.level.lot if entry.level else None}
    for posting in entry.postings:
        named |= {posting.source, posting.target}
    if draft.opens and draft.corrects is None:
        named.discard(draft.opens.code)
    return frozenset(code for code in named if code)
