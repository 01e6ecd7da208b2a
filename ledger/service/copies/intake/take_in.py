"""Taking in: a maker's tables become entries of her book, all of them or none.

Guarantees: all that is wrong in all tables is told at once, and then nothing is recorded; a row
that was taken before is not taken again; entries say that they were copied, from which file, line
and row, and when the book really got them. Refuses: tables that it has no map for.
"""

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from msgspec import Struct

from ledger.domain.entries import Entry
from ledger.domain.tables.days import DayOrder
from ledger.domain.tables.grid import Found
from ledger.errors import InputError
from ledger.service.copies.intake.column_map import ColumnMap
from ledger.service.copies.intake.row_acts import Act, Reading, acts_of_table, shown_sign
from ledger.service.copies.intake.row_sums import summed
from ledger.service.copies.intake.table_files import read_tables
from ledger.service.copies.intake.table_maps import Mapped, mapped
from ledger.service.copies.intake.taken import changed_rows, taken_rows
from ledger.service.copies.intake.together import Within, together
from ledger.service.copies.intake.tries import Tries, by_kind
from ledger.service.desk.book import Book, How
from ledger.store.read import queries


class Asked(Struct, frozen=True):
    """How tables are to be taken in."""

    map: ColumnMap | None = None
    """What their columns mean; None: they are named after verbs and words, or of a shipped form."""
    dates: DayOrder | None = None
    """In which order days are written; None: as the map says, or as they show."""
    decimal: str | None = None
    """The sign that parts the decimals; None: as the map says, or as the cells show it."""
    is_rehearsal: bool = False
    """Whether nothing is to be recorded."""


class Read(Struct, frozen=True):
    """One table that was read."""

    file: str
    """Name of its file."""
    rows: int
    """How many rows it has."""
    said: tuple[str, ...]
    """How it was read, in words."""


class TakenIn(Struct, frozen=True):
    """What became of tables that were handed in."""

    tables: tuple[Read, ...]
    """The tables that were read."""
    found: tuple[Found, ...]
    """What is wrong: nothing is recorded while there is anything."""
    answerable: int
    """How many of these a reason would answer."""
    remarks: tuple[Found, ...]
    """What is merely unusual."""
    numbers: tuple[int, ...]
    """Numbers of the entries that were made, or would be."""
    kinds: Mapping[str, int]
    """How many of each kind."""
    rows: int
    """How many rows were taken, or would be."""
    known: int
    """How many rows the book had already."""
    untried: int
    """How many acts were not tried, since what they build on is wrong."""
    is_recorded: bool
    """Whether the entries are in the book."""


def take_in(
    book: Book,
    how: How,
    path: Path,
    asked: Asked,
    on_act: Callable[[int, int], None] = lambda _done, _total: None,
) -> TakenIn:
    """Take a CSV file, a folder of them or a workbook into the book.

    Args:
        book: The book.
        how: Who hands them in; when, where rows do not say; the reason for what needs one.
        path: Where the tables are.
        asked: How they are to be taken.
        on_act: Called after each act with how many are done and how many there are.

    Raises:
        InputError: There is no table there, or none that there is a map for.
        StorageError: A file cannot be read, or the book cannot be written.
    """
    tables, found = read_tables(path)
    parts, wrong = mapped(tables, asked.map)
    found += wrong
    if not any(part.told for part in parts) and not found:
        raise InputError(
            f"No table in {path} is named after a verb of the book or fits a map.",
            f"Propose a map with: pottle import {path} --like map.toml",
        )
    acts: list[Act] = []
    read: list[Read] = []
    with book.reading() as connection:
        house = queries.house(connection)
    currency = house.currency if house else ""
    for part in parts:
        reading = _reading(part, asked, currency, how.at, path)
        _read(part, reading, acts, read, found)
    if not how.by and any("by" not in act.words for act in acts):
        raise InputError(
            "It is not said who hands these rows in.",
            "Give your initials with --by or set POTTLE_BY, or add a column for them.",
        )
    outcome: list[TakenIn] = []

    def do(within: Within) -> Sequence[Entry] | None:
        tries = Tries(within, how, found=list(found))
        taken = taken_rows(within.connection)
        tries.found += changed_rows(taken, acts)
        new = sorted((act for act in acts if act.row not in taken), key=lambda act: act.turn)
        for number, act in enumerate(new, 1):
            tries.do(act)
            on_act(number, len(new))
        stays = not (tries.found or asked.is_rehearsal)
        outcome.append(_told(read, acts, new, tries, is_recorded=stays))
        return tries.entries if stays else None

    together(book, do)
    return outcome[-1]


def _reading(part: Mapped, asked: Asked, currency: str, at: str | None, path: Path) -> Reading:
    """Return how the cells of a table are read."""
    sign = asked.decimal or (part.map.decimal if part.map else None)
    return Reading(
        dates=asked.dates or (part.map.dates if part.map else None),
        decimal=sign or (shown_sign(part.table, part.told) if part.told else None),
        words=part.map.words if part.map else {},
        currency=currency,
        at=at,
        folder=str(path if path.is_dir() else path.parent),
    )


def _read(
    part: Mapped, reading: Reading, acts: list[Act], read: list[Read], found: list[Found]
) -> None:
    """Read a table's rows as acts; what it was read as, and what is wrong, joins the lists."""
    table = part.table
    if part.told is None:
        read.append(Read(table.file, len(table.lines), ("left out: no map has a part for it",)))
        return
    made, wrong, left_out = acts_of_table(table, part.told, reading, part.place)
    acts += summed(made)
    found += wrong
    sign, dates = reading.decimal, reading.dates
    said = [
        f"{part.map.name if part.map else 'words of the book'} as its map",
        *table.said,
        *([{",": "decimal comma", ".": "decimal point"}[sign]] if sign else []),
        *([f"days as {dates}"] if dates else []),
        *([f"left out by the map: {left_out}"] if left_out else []),
    ]
    read.append(Read(table.file, len(table.lines), tuple(said)))


def _told(
    read: Sequence[Read],
    acts: Sequence[Act],
    new: Sequence[Act],
    tries: Tries,
    *,
    is_recorded: bool,
) -> TakenIn:
    rows = {act.row for act in new}
    return TakenIn(
        tables=tuple(read),
        found=tuple(
            sorted(dict.fromkeys(tries.found), key=lambda each: (each.file, each.line or 0))
        ),
        answerable=len(set(tries.answerable)),
        remarks=tuple(tries.remarks),
        numbers=tuple(entry.seq for entry in tries.entries),
        kinds=by_kind(tries.done),
        rows=len(rows),
        known=len({act.row for act in acts} - rows),
        untried=tries.untried,
        is_recorded=is_recorded and bool(tries.done),
    )
