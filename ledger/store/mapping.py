"""Entries as rows: the one mapping between the entry classes and the tables.

Guarantees: `rows(entry)` are exactly the rows that an append inserts and that verification
expects to find. Refuses: to read; entries are read from their canonical text.
"""

from collections.abc import Callable, Mapping
from datetime import date, datetime
from enum import StrEnum
from typing import Any

from sqlalchemy import Table

from ledger.domain.entries import Entry, Facts, Material, Person
from ledger.domain.fields import specs
from ledger.domain.plain import instant_text
from ledger.domain.quantity import Quantity
from ledger.store.tables import (
    CHILDREN,
    ENTRY,
    LEVEL,
    LOT,
    MATERIAL_KEY,
    PERSON_KEY,
    POSTING,
    TYPED,
)

Row = dict[str, Any]
"""A row by column name."""
LotIds = Mapping[str, int]
"""Lot numbers by code."""


def rows(
    entry: Entry, body: str, leaf: bytes, lot_ids: LotIds, is_first_of: Callable[[str, str], bool]
) -> list[tuple[Table, Row]]:
    """Return the rows of an entry in the order they can be inserted.

    Args:
        entry: The entry.
        body: Its canonical text.
        leaf: The hash of that text.
        lot_ids: Numbers of the lots it speaks of, without the one it opens.
        is_first_of: Tells whether a person's or material's key is new: (kind, key).
    """
    draft = entry.draft
    ids = dict(lot_ids)
    found: list[tuple[Table, Row]] = []
    if draft.opens and draft.corrects is None:
        ids[draft.opens.code] = entry.seq
        found.append((LOT, _lot_row(entry)))
    found += _key_rows(entry, is_first_of)
    found.append((ENTRY, _spine_row(entry, body, leaf, ids)))
    found += _facts_rows(entry.seq, draft.facts)
    found += [(POSTING, _posting_row(entry, line, ids)) for line in range(len(entry.postings))]
    if entry.level:
        level = {"seq": entry.seq, "lot": ids[entry.level.lot], "amount": entry.level.amount}
        found.append((LEVEL, level))
    return found


def _lot_row(entry: Entry) -> Row:
    opens = entry.draft.opens
    assert opens is not None
    return {
        "id": entry.seq,
        "code": opens.code,
        "lot_type": str(opens.lot_type),
        "measure": str(opens.measure),
    }


def _key_rows(entry: Entry, is_first_of: Callable[[str, str], bool]) -> list[tuple[Table, Row]]:
    facts = entry.draft.facts
    if isinstance(facts, Person) and is_first_of("person", facts.initials):
        return [(PERSON_KEY, {"initials": facts.initials, "seq": entry.seq})]
    if isinstance(facts, Material) and is_first_of("material", facts.code):
        return [(MATERIAL_KEY, {"code": facts.code, "seq": entry.seq})]
    return []


def _spine_row(entry: Entry, body: str, leaf: bytes, ids: LotIds) -> Row:
    draft = entry.draft
    return {
        "seq": entry.seq,
        "kind": entry.kind,
        "lot": ids[draft.lot] if draft.lot else None,
        "happened_at": instant_text(draft.happened.at),
        "offset_min": draft.happened.offset_min,
        "precision": str(draft.happened.precision),
        "recorded_at": instant_text(entry.recorded_at),
        "origin": str(draft.origin),
        "sheet": draft.sheet,
        "by": draft.by,
        "corrects": draft.corrects,
        "stands_for": entry.stands_for,
        "reason": draft.reason,
        "body": body,
        "leaf": leaf,
    }


def _facts_rows(seq: int, facts: Facts) -> list[tuple[Table, Row]]:
    kind = facts.KIND
    found = [(TYPED[kind], {"seq": seq, "entry_kind": kind, **_cells(facts)})]
    for spec in specs(type(facts)):
        if spec.is_many:
            table = CHILDREN[kind, spec.name]
            found += [
                (table, {"seq": seq, "line": line, **_cells(child)})
                for line, child in enumerate(getattr(facts, spec.name), start=1)
            ]
    return found


def _cells(facts: object) -> Row:
    cells: Row = {}
    for spec in specs(type(facts)):
        if spec.is_many:
            continue
        value = getattr(facts, spec.name)
        if spec.shape is Quantity:
            cells[spec.name] = value.amount if value else None
            cells[f"{spec.name}_measure"] = str(value.measure) if value else None
            cells[f"{spec.name}_written"] = value.written if value else None
        else:
            cells[spec.name] = _cell(value)
    return cells


def _cell(value: object) -> object:
    if isinstance(value, bool):
        return int(value)
    if isinstance(value, datetime):
        return instant_text(value)
    if isinstance(value, date):
        return value.isoformat()
    return str(value) if isinstance(value, StrEnum) else value


def _posting_row(entry: Entry, line: int, ids: LotIds) -> Row:
    posting = entry.postings[line]
    return {
        "seq": entry.seq,
        "line": line + 1,
        "source": ids[posting.source] if posting.source else None,
        "target": ids[posting.target] if posting.target else None,
        "place": str(posting.place) if posting.place else None,
        "taken": posting.taken,
        "given": posting.given,
    }


def lot_codes(entry: Entry) -> frozenset[str]:
    """Return the codes of all lots an entry's rows refer to by number, but the one it opens."""
    draft = entry.draft
    named = {draft.lot, entry.level.lot if entry.level else None}
    for posting in entry.postings:
        named |= {posting.source, posting.target}
    if draft.opens and draft.corrects is None:
        named.discard(draft.opens.code)
    return frozenset(code for code in named if code)
