"""Export of tables: all that the book stores, and what its columns mean.

Guarantees: all tables are of one moment; every column is told with its meaning, its unit and the
words it may have. Refuses: to leave out a table.
"""

import ast
import inspect
from collections.abc import Iterator
from enum import StrEnum
from functools import cache
from textwrap import dedent

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import FACTS
from ledger.domain.entries.choices import LotType, Origin, Place, Precision
from ledger.domain.entries.fields import SCALES, FieldSpec, scale_ending, specs
from ledger.domain.evidence.seals import Seal
from ledger.service.desk.book import Book
from ledger.service.evidence.seal import seal_on
from ledger.store.copies.tables import TableRows, stored_tables

OF_MEASURE = "smallest unit: µL, mg or millionths of a piece"
"""In what amounts are stored."""
SPINE: dict[str, dict[str, tuple[str, str, type[StrEnum] | None]]] = {
    "entry": {
        "seq": ("Number of the entry.", "", None),
        "kind": ("What kind of entry it is: its own table has that name.", "", None),
        "lot": ("Number of the lot it is about.", "", None),
        "happened_at": ("When it happened, in UTC.", "", None),
        "offset_min": ("Minutes east of UTC of the clock it was written by.", "min", None),
        "precision": ("How exactly that is known.", "", Precision),
        "recorded_at": ("When the book took it, in UTC.", "", None),
        "origin": ("Where it came from.", "", Origin),
        "sheet": ("Number of the paper sheet, or the row of a file, it was copied from.", "", None),
        "by": ("Initials of who did it.", "", None),
        "corrects": ("Number of the entry that it replaces or strikes.", "", None),
        "stands_for": ("Number of the first entry of its chain of corrections.", "", None),
        "reason": ("Why, where a reason was asked for.", "", None),
        "body": ("Its canonical text (RFC 8785), which is hashed and believed.", "", None),
        "leaf": ("SHA-256 of a zero byte and that text, in hexadecimal.", "", None),
    },
    "lot": {
        "id": ("Number of the lot: that of the entry that opened it.", "", None),
        "code": ("Its code.", "", None),
        "lot_type": ("How it came into the book.", "", LotType),
        "measure": ("In what it is counted.", "", Measure),
    },
    "person_key": {
        "initials": ("Initials of a person.", "", None),
        "seq": ("Number of the entry that named them first.", "", None),
    },
    "material_key": {
        "code": ("Code of a material.", "", None),
        "seq": ("Number of the entry that named it first.", "", None),
    },
    "posting": {
        "seq": ("Number of the entry that moves it.", "", None),
        "line": ("Which of its movements.", "", None),
        "source": ("Number of the lot it left.", "", None),
        "target": ("Number of the lot it went to.", "", None),
        "place": ("The outside end, when one end is no lot.", "", Place),
        "taken": ("What left, in the source's measure.", OF_MEASURE, None),
        "given": ("What arrived, in the target's measure.", OF_MEASURE, None),
    },
    "level": {
        "seq": ("Number of the entry that measured it.", "", None),
        "lot": ("Number of the lot.", "", None),
        "amount": ("What was measured.", OF_MEASURE, None),
    },
    "tree": {
        "height": ("Height of a complete node of the tree of hashes (RFC 6962).", "", None),
        "place": ("Which of that height, from 0.", "", None),
        "hash": ("Its hash, in hexadecimal.", "", None),
    },
    "details": {
        "seq": ("Number of the entry whose details these are.", "", None),
        "salt": ("What is hashed with them, in hexadecimal.", "", None),
        "name": ("Name of the person or the party.", "", None),
        "role": ("What the person does.", "", None),
        "phone": ("Telephone number.", "", None),
        "email": ("Electronic mail address.", "", None),
        "address": ("Postal address in one line.", "", None),
        "words": ("Whom to ask for, when they are there.", "", None),
        "gln": ("Number of the party (GLN), 13 digits.", "", None),
    },
}
"""The tables that are of no one kind: for each column its meaning, unit and list of words."""


class Meaning(Struct, frozen=True):
    """What a column means."""

    table: str
    """Name of the table."""
    column: str
    """Name of the column."""
    words: str
    """What it says."""
    unit: str
    """In what it is counted; empty where it is no number of anything."""
    codes: tuple[str, ...]
    """The words it may have; none where any may stand there."""


class Exported(Struct, frozen=True):
    """All tables of the book."""

    seal: Seal
    """The seal of the book then."""
    tables: tuple[TableRows, ...]
    """The tables."""
    meanings: tuple[Meaning, ...]
    """What their columns mean."""


def export_tables(book: Book) -> Exported:
    """Return every table of the book, and what its columns mean."""
    with book.reading() as connection:
        tables = tuple(stored_tables(connection))
        seal = seal_on(connection)
    return Exported(seal, tables, tuple(_meanings(tables)))


def _meanings(tables: tuple[TableRows, ...]) -> Iterator[Meaning]:
    for table, columns, _ in tables:
        known = SPINE.get(table) or _of_kind(table)
        for column in columns:
            words, unit, codes = known[column]
            yield Meaning(table, column, words, unit, tuple(map(str, codes or ())))


def _of_kind(table: str) -> dict[str, tuple[str, str, type[StrEnum] | None]]:
    kind, _, name = table.partition("_")
    facts: type[Struct] = FACTS[kind]
    head = {
        "seq": ("Number of the entry.", "", None),
        "entry_kind": ("Its kind.", "", None),
        "line": ("Which line of the list.", "", None),
    }
    if name:
        facts = next(spec.shape for spec in specs(facts) if spec.name == name)
    said = told_below(facts)
    columns = (pair for spec in specs(facts) for pair in _columns(spec, said[spec.name]))
    return {**head, **dict(columns)}


def _columns(
    spec: FieldSpec, words: str
) -> Iterator[tuple[str, tuple[str, str, type[StrEnum] | None]]]:
    if spec.shape is Quantity:
        yield spec.name, (words, OF_MEASURE, None)
        yield f"{spec.name}_measure", ("In what that is counted.", "", Measure)
        yield f"{spec.name}_written", ("How it was written.", "", None)
        return
    ending = scale_ending(spec.name)
    scale, unit = SCALES[ending] if ending and spec.shape is int else (1, "")
    codes = spec.shape if issubclass(spec.shape, StrEnum) else None
    counted = f"1/{scale} {unit}".strip() if scale > 1 else ""
    yield spec.name, (words, "0 or 1" if spec.shape is bool else counted, codes)


@cache
def told_below(kind: type[Struct]) -> dict[str, str]:
    """Return what stands below each field of a class of facts."""
    body = ast.parse(dedent(inspect.getsource(kind))).body[0]
    assert isinstance(body, ast.ClassDef)
    pairs = zip(body.body, body.body[1:], strict=False)
    return {
        field.target.id: " ".join(inspect.cleandoc(str(below.value.value)).split())
        for field, below in pairs
        if isinstance(field, ast.AnnAssign)
        and isinstance(field.target, ast.Name)
        and isinstance(below, ast.Expr)
        and isinstance(below.value, ast.Constant)
    }
