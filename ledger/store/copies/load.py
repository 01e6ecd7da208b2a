"""Loading entries from their texts, many at once, into a book that has none.

Guarantees: the rows are those an append would have written, the tree and the numbers too. Refuses:
a line that is not exactly what a book writes in its place, saying which and why.
"""

import json
from collections import defaultdict
from collections.abc import Callable, Iterable
from typing import Any

from sqlalchemy import Connection
from sqlalchemy.exc import DBAPIError, OperationalError

from ledger.domain.entries import Entry
from ledger.domain.entries.canonical import read_canonical
from ledger.domain.entries.plain import UNREADABLE, entry_from_plain, entry_text
from ledger.domain.evidence.merkle import leaf_hash
from ledger.errors import InputError
from ledger.store.audit.rows import Reader, UnknownLotError
from ledger.store.copies.lines import DETAILS_BEGIN
from ledger.store.engine.connections import cause
from ledger.store.form.appends import out_of_order
from ledger.store.form.columns import DETAIL_FIELDS, IN_ORDER
from ledger.store.form.mapping import Cells
from ledger.store.write.rows import insert_many

CHUNK = 1000
"""How many entries are inserted at once."""
NOTHING_KEPT = "Nothing was kept. Use an export that is whole, as pottle export writes it."


class Chains:
    """Which entries are in force so far, and for which each stands."""

    def __init__(self) -> None:
        """Begin before the first entry."""
        # Entries are numbered from 1; nothing stands for 0.
        self._stands_for: list[int] = [0]
        self._corrected: set[int] = set()

    def fault(self, entry: Entry) -> str:
        """Return why an entry cannot correct what it says it does, or nothing; remember it."""
        corrects, expected = entry.draft.corrects, entry.seq
        if corrects is not None:
            if not 1 <= corrects < entry.seq:
                return f"corrects entry {corrects}, which does not come before it"
            if corrects in self._corrected:
                return f"corrects entry {corrects}, which is not in force"
            expected = self._stands_for[corrects]
            self._corrected.add(corrects)
        self._stands_for.append(expected)
        return "" if entry.stands_for == expected else f"does not stand for entry {expected}"


def load(
    connection: Connection, lines: Iterable[str], total: int, progress: Callable[[int, int], None]
) -> Reader:
    """Insert the entries of lines into an empty book; returns what was met.

    Args:
        connection: A connection in a writing transaction on a book without entries.
        lines: The canonical text of every entry in number order, then details, without line ends.
        total: How many are said to come.
        progress: Told how far it is.

    Raises:
        InputError: A line does not fit.
    """
    with out_of_order(connection):
        return _load(connection, lines, total, progress)


def _load(
    connection: Connection, lines: Iterable[str], total: int, progress: Callable[[int, int], None]
) -> Reader:
    reader, chains = Reader(), Chains()
    waiting: dict[str, list[Cells]] = defaultdict(list)
    first = 1
    for seq, line in enumerate(lines, start=1):
        if line.startswith(DETAILS_BEGIN):
            waiting["details"].append(_details(seq, line))
            continue
        if seq != reader.last + 1:
            raise _unfit(seq, "is no details, and after the first of these come details alone")
        for table, row in _rows(reader, chains, seq, line):
            waiting[table].append(row)
        reader.last = seq
        if seq - first + 1 == CHUNK:
            _insert(connection, waiting, first, seq)
            progress(seq, total)
            first = seq + 1
    _insert(connection, waiting, first, reader.last)
    progress(reader.last, total)
    return reader


def _rows(reader: Reader, chains: Chains, seq: int, line: str) -> list[tuple[str, Cells]]:
    try:
        entry = entry_from_plain(json.loads(line))
        is_ours = entry_text(entry) == line
    except UNREADABLE as error:
        raise _unfit(seq, "is not an entry as a book writes it") from error
    if not is_ours:
        raise _unfit(seq, "is not an entry as a book writes it")
    if entry.seq != seq:
        raise _unfit(seq, f"holds entry {entry.seq}, where entry {seq} was expected")
    if fault := chains.fault(entry):
        raise _unfit(seq, fault)
    leaf = leaf_hash(line.encode())
    try:
        rows = reader.expected(entry, line, leaf)
    except UnknownLotError as error:
        raise _unfit(seq, f"speaks of the lot {error}, which no line before it opened") from error
    except UNREADABLE as error:
        raise _unfit(seq, "is not an entry as a book writes it") from error
    return [*rows, *(("tree", node) for node in reader.frontier.add(leaf))]


def _details(seq: int, line: str) -> Cells:
    """Return the row of the details that a line tells; verifying tells whether they fit."""
    try:
        told: dict[str, Any] = dict(read_canonical(line))
        details, cells = told.pop("details"), [told.pop("entry"), told.pop("salt")]
        cells += [details.pop(name, None) for name in DETAIL_FIELDS]
        if told or details or bytes.fromhex(cells[1]).hex() != cells[1]:
            raise ValueError("There is more than details have.")
    except UNREADABLE as error:
        raise _unfit(seq, "is not the details of an entry as a book writes them") from error
    return tuple(cells)


def _unfit(seq: int, what: str) -> InputError:
    # The first line of the file says what follows it.
    return InputError(f"Line {seq + 1} {what}.", NOTHING_KEPT)


def _insert(connection: Connection, waiting: dict[str, list[Cells]], first: int, last: int) -> None:
    try:
        for table in IN_ORDER:
            if rows := waiting.pop(table, None):
                insert_many(connection, table, rows)
    except OperationalError:  # the disk or the server, and not what the lines say
        raise
    except DBAPIError as error:
        raise InputError(
            f"Lines {first + 1} to {last + 1} do not fit together: {cause(error)}.", NOTHING_KEPT
        ) from error
