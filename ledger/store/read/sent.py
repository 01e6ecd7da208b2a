"""What was sent of lots and what came back, many lots at once.

Guarantees: one statement for a chunk of lots, found by index; only entries in force count. Refuses:
to sum; it tells each movement.
"""

from collections.abc import Iterator, Sequence
from typing import Any

from msgspec import Struct

from ledger.domain.entries import When
from ledger.domain.entries.choices import MoveAs
from ledger.domain.entries.plain import read_instant
from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask_for, chunks, go_by_index
from ledger.store.read.people import shown_names


class Moved(Struct, frozen=True):
    """Goods that left, or came back."""

    lot: int
    """Number of the lot."""
    happened: When
    """When."""
    moved_as: MoveAs
    """Sale, sample, breakage and so on."""
    amount: int
    """How much, in the lot's measure."""
    party: str | None
    """To whom, or from whom when it came back."""
    document: str | None
    """Delivery note, invoice or stall sheet."""
    stands_for: int
    """Number that decides among entries of the same instant."""


_MOVES = """
    SELECT e.lot, e.happened_at, e.offset_min, m.moved_as, m.amount, m.party, m.document,
        e.stands_for
    FROM {wanted} w
    CROSS JOIN entry e
    JOIN move m ON m.seq = e.seq
    LEFT JOIN entry c ON c.corrects = e.seq
    WHERE e.lot = w.lot AND c.corrects IS NULL
    ORDER BY e.happened_at, e.stands_for"""


def moves_from(connection: Connection, lots: Sequence[int]) -> Iterator[Moved]:
    """Yield what was sent of lots and what came back, by lot as given, then by when."""
    go_by_index(connection)
    shown = shown_names(connection)
    for part in chunks(lots):
        moves_of: dict[int, list[Moved]] = {lot: [] for lot in part}
        for lot, at, offset_min, moved_as, amount, party, *rest in move_rows(connection, part):
            when, who = When(read_instant(at), offset_min), shown.get(party, party)
            moves_of[lot].append(Moved(lot, when, MoveAs(moved_as), amount, who, *rest))
        for moves in moves_of.values():
            yield from moves


def move_rows(connection: Connection, lots: Sequence[int]) -> list[Any]:
    """Return what was sent of lots and what came back as it stands in the book, by when."""
    return ask_for(connection, _MOVES, lots)
