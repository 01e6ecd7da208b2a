"""The key data of a recall or a period for outsiders: received, transformed, shipped.

Guarantees: one row an event with the key data elements of 21 CFR 1.1340(a) (shipping), 1.1345 (a)
and (b) (receiving) and 1.1350(a) (transformation), text as of 2026-06-11; days are ISO dates; what
is not known is left empty and told beside the table. Refuses: prices, and of a recall inputs that
are not recalled themselves; to claim that the rule applies or is met.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import House, Party
from ledger.domain.entries.choices import LotType
from ledger.domain.lots.lot import Lot
from ledger.service.recall.events import Events
from ledger.service.recall.trail import Received, Sent, Trail, Transformed
from reports.kit.amounts import UNITS, amount_in
from reports.kit.format import plural
from reports.kit.tables import Sheet

RECEIVING = (
    "traceability_lot_code",
    "quantity",
    "unit_of_measure",
    "product_description",
    "immediate_previous_source_location_description",
    "received_at_location_description",
    "date_received",
    "tlc_source_location_description",
    "reference_document_type",
    "reference_document_number",
    "lot_in_this_book",
)
"""Columns of what was received."""
OF_INPUTS = (
    "input_traceability_lot_code",
    "input_product_description",
    "input_quantity_used_from_that_lot",
    "input_unit_of_measure",
)
"""Columns of what went in."""
TRANSFORMATION = (
    "new_traceability_lot_code",
    "transformed_at_location_description",
    "date_transformation_completed",
    "product_description",
    "quantity",
    "unit_of_measure",
    "reference_document_type",
    "reference_document_number",
    *OF_INPUTS,
)
"""Columns of what was made or filled; a lot with several recalled inputs has several rows."""
SHIPPING = (
    "traceability_lot_code",
    "quantity",
    "unit_of_measure",
    "product_description",
    "immediate_subsequent_recipient_location_description",
    "ship_from_location_description",
    "date_shipped",
    "tlc_source_location_description",
    "reference_document_type",
    "reference_document_number",
)
"""Columns of what was shipped."""
MAY_BE_EMPTY = frozenset(OF_INPUTS)
"""Columns that are rightly empty: the recalled lot's own inputs are its recipe."""


class KeyData(Struct, frozen=True):
    """One table of key data, and what it lacks."""

    name: str
    """receiving, transformation or shipping."""
    sheet: Sheet
    """The table."""
    missing: tuple[str, ...]
    """What is not in the book, a sentence each."""


def key_data(trail: Trail) -> tuple[KeyData, ...]:
    """Return the three tables of a recall."""
    return _tables(trail, trail.recall.house)


def key_events(events: Events) -> KeyData:
    """Return all critical tracking events of a period as one table that can be sorted by its day.

    Its columns are those of the three tables, each once, after the event and its day.
    """
    tables = _tables(events, events.house)
    columns = dict.fromkeys(head for table in tables for head in table.sheet.heads)
    heads = ("critical_tracking_event", "date_of_event", *columns)
    rows = [
        (table.name, row[table.sheet.heads.index(DATES[table.name])], *_under(table, row, columns))
        for table in tables
        for row in table.sheet.rows
    ]
    # One file has all three, so none of them is named as one.
    whats = (sentence.replace(".csv", "", 1) for table in tables for sentence in table.missing)
    missing = tuple(f"Of {what}" for what in whats)
    return KeyData("events", Sheet(heads, tuple(sorted(rows, key=lambda row: row[1]))), missing)


DATES = {
    "receiving": "date_received",
    "transformation": "date_transformation_completed",
    "shipping": "date_shipped",
}
"""The column of its day, by table."""


def _under(table: KeyData, row: Sequence[str], columns: Iterable[str]) -> Iterator[str]:
    told = dict(zip(table.sheet.heads, row, strict=True))
    return (told.get(column, "") for column in columns)


def _tables(trail: Trail | Events, house: House | None) -> tuple[KeyData, ...]:
    here = _Place.of_house(house)
    return (
        _table(
            "receiving",
            RECEIVING,
            [_received(item, here, trail.parties) for item in trail.received],
        ),
        _table(
            "transformation",
            TRANSFORMATION,
            [row for item in trail.transformed for row in _transformed(item, here)],
        ),
        _table("shipping", SHIPPING, [_sent(item, here, trail.parties) for item in trail.sent]),
    )


class _Place(Struct, frozen=True):
    """A location description: business name, telephone number, address (21 CFR 1.1310)."""

    words: str
    missing: tuple[tuple[str, str], ...]
    """What is not known, and of whom."""

    @classmethod
    def of(cls, name: str | None, phone: str | None, address: str | None) -> "_Place":
        parts = (("name", name), ("telephone number", phone), ("address", address))
        lacks = [(what, name or "somebody not named") for what, said in parts if not said]
        return cls("; ".join(said for _, said in parts if said), tuple(lacks))

    @classmethod
    def of_house(cls, house: House | None) -> "_Place":
        if house is None:
            return cls.of(None, None, None)
        where = ", ".join(part for part in (house.address, house.country) if part)
        return cls.of(house.name, house.phone, where if house.address else None)

    @classmethod
    def of_party(cls, name: str | None, parties: Mapping[str, Party]) -> "_Place":
        known = parties.get(name or "")
        return cls.of(name, known.phone if known else None, known.address if known else None)


class _Row(Struct, frozen=True):
    cells: tuple[str, ...]
    missing: tuple[tuple[str, str], ...]


def _table(name: str, heads: tuple[str, ...], rows: Sequence[_Row]) -> KeyData:
    return KeyData(
        name, Sheet(heads, tuple(row.cells for row in rows)), _missing(name, heads, rows)
    )


def _missing(name: str, heads: tuple[str, ...], rows: Sequence[_Row]) -> tuple[str, ...]:
    of_whom: dict[str, dict[str, None]] = {}
    for what, who in (lack for row in rows for lack in row.missing):
        of_whom.setdefault(what, {})[who] = None
    told = [f"{name}.csv lacks the {what} of {', '.join(who)}." for what, who in of_whom.items()]
    for place, head in enumerate(heads):
        empty = sum(not row.cells[place] for row in rows)
        if empty and head not in MAY_BE_EMPTY:
            count = f"{empty} of {plural(len(rows), 'row')}"
            told.append(f"{name}.csv lacks the {head.replace('_', ' ')} in {count}.")
    return tuple(told)


def _received(item: Received, here: _Place, parties: Mapping[str, Party]) -> _Row:
    brief = item.brief
    # Outside the house a delivery is followed by its supplier's own code, where that is known.
    is_theirs = not item.is_return and brief.supplier_lot is not None
    source = _Place.of_party(item.source, parties)
    return _Row(
        (
            brief.supplier_lot if is_theirs and brief.supplier_lot else brief.code,
            *_amount(item.amount, brief),
            brief.name,
            source.words,
            here.words,
            item.on,
            source.words if is_theirs else here.words,
            *document(item.document),
            brief.code,
        ),
        (*source.missing, *here.missing),
    )


def _transformed(item: Transformed, here: _Place) -> Iterable[_Row]:
    made = (
        item.brief.code,
        here.words,
        item.on,
        item.brief.name,
        *_amount(item.made, item.brief),
        "batch record" if item.entry else "",
        f"{item.brief.code} entry {item.entry}" if item.entry else "",
    )
    for source, taken in item.inputs:
        amount = _amount(taken, source) if taken else ("not measured", UNITS[source.measure])
        yield _Row((*made, source.code, source.name, *amount), here.missing)
    if not item.inputs:
        yield _Row((*made, "", "", "", ""), here.missing)


def _sent(item: Sent, here: _Place, parties: Mapping[str, Party]) -> _Row:
    to = _Place.of_party(item.to, parties)
    return _Row(
        (
            item.brief.code,
            *_amount(item.amount, item.brief),
            item.brief.name,
            to.words,
            here.words,
            item.on,
            here.words,
            *document(item.document),
        ),
        (*to.missing, *here.missing),
    )


def _amount(amount: int, brief: Lot) -> tuple[str, str]:
    is_bottles = brief.lot_type is LotType.PACKED and brief.measure is Measure.UEACH
    return amount_in(amount, brief.measure), "bottle" if is_bottles else UNITS[brief.measure]


def document(written: str | None) -> tuple[str, str]:
    """Return the type and the number of a document from how it was written.

    >>> document("stall sheet S-001"), document("DN-0101"), document(None)
    (('stall sheet', 'S-001'), ('', 'DN-0101'), ('', ''))
    """
    if not written:
        return "", ""
    kind, _, number = written.strip().rpartition(" ")
    return kind, number
