"""Auditing: is every row of the book what its entries say, and every entry what its hash says?

Guarantees: recomputes leaves from the stored text, the rows of every table from the text, and the
tree from the leaves; compares tables, views and guards with those the book was made with. Refuses:
to trust any of them.
"""

from collections.abc import Callable, Iterator
from itertools import islice
from typing import Any

from msgspec import Struct
from sqlalchemy import Connection

from ledger.domain.evidence.merkle import Frontier
from ledger.store.audit.beside import Beside, beside
from ledger.store.audit.details import detail_faults, forgotten
from ledger.store.audit.file import TROUBLE, any_text, form_faults, is_damage
from ledger.store.audit.passed import passes
from ledger.store.audit.rows import Fault, Reader, chunk_faults, stray_faults, taken_up
from ledger.store.audit.storage import condition_faults, engine_faults, version_faults
from ledger.store.audit.swift import Progress, sound_tree
from ledger.store.engine.connections import cause

__all__ = ["Audit", "Fault", "Progress", "audit"]

CHUNK = 1000
"""How many entries are compared at once."""
MOST_FAULTS = 50
"""After so many faults the audit stops looking for more."""
_SIZE = (
    "SELECT size.n, MAX(entry.seq), MAX(CASE WHEN entry.seq <= size.n THEN entry.seq END) "
    "FROM entry, (SELECT COUNT(*) AS n FROM entry) AS size GROUP BY size.n"
)
_NODES = "SELECT height, place, hash FROM tree"
# The node ends with entry (place + 1) << height; PostgreSQL shifts by an INTEGER alone.
_NODES_AFTER = f"{_NODES} WHERE (place + 1) << CAST(height AS INTEGER) > "


class Audit(Struct, frozen=True):
    """What an audit found."""

    entries: int
    """How many entries the book has."""
    root: bytes
    """Root of the tree over the stored text."""
    faults: tuple[Fault, ...]
    """What does not fit: first of the book as a whole, then by entry; empty when all does."""
    after: int = 0
    """Number of the last entry that was passed over; 0 when every entry was looked at."""
    forgotten: int = 0
    """How many entries have no details any more, as others say: they were forgotten."""

    @property
    def is_cut(self) -> bool:
        """Whether the audit stopped looking for more."""
        return len(self.faults) >= MOST_FAULTS


def audit(
    connection: Connection, progress: Progress = lambda done, total: None, after: int = 0
) -> Audit:
    """Compare the whole book with what its entries say.

    Args:
        connection: A connection in a transaction that reads; faults end it without a commit.
        progress: Told how far the audit is.
        after: Number of the last entry that is known to fit, with all before it, and is passed
            over; the database's own checks of the whole file are left out then too.
    """
    reader = taken_up(connection, after) if after else Reader()
    with any_text(connection):
        faults = list(islice(_faults(connection, reader, progress, after), MOST_FAULTS))
    gone = 0 if faults else len(forgotten(connection))
    if faults:
        _leave(connection)
    faults.sort(key=lambda fault: fault.seq or 0)
    return Audit(reader.last, reader.frontier.root(), tuple(faults), after, gone)


def _leave(connection: Connection) -> None:
    """End the transaction without a commit, which a damaged file may refuse."""
    if transaction := connection.get_transaction():
        transaction.rollback()


def _faults(
    connection: Connection, reader: Reader, progress: Progress, after: int
) -> Iterator[Fault]:
    is_of_form = True
    storage: list[str] = []
    try:
        for what in form_faults(connection):
            is_of_form = False
            yield Fault(None, what)
        if after:
            storage += version_faults(connection)
        elif _is_sound(connection, reader, progress, storage, is_of_form):
            return
    except TROUBLE as error:
        # In a sound book it is the disk that fails, which is no finding of an audit.
        if is_of_form and not is_damage(error):
            raise
        storage.append(f"The book cannot be examined to its end: {cause(error)}.")
    yield from (Fault(None, what) for what in storage)
    try:
        yield from _row_faults(connection, reader, progress, after)
    except TROUBLE as error:
        if is_of_form and not is_damage(error):
            raise
        yield Fault(None, f"The tables cannot be read to their end: {cause(error)}.")


def _is_sound(
    connection: Connection, reader: Reader, progress: Progress, storage: list[str], is_of_form: bool
) -> bool:
    """Tell swiftly whether all is well; if not, `_row_faults` tells what of the rows does not fit.

    What the database finds wrong with its own storage is put into `storage`.
    """
    with beside(connection) as second:
        # The second reader has less to do than this one, so it looks at a part of the storage too.
        conditions = second.ask(lambda own: [*condition_faults(own)])

        def check() -> None:
            storage.extend(engine_faults(connection, lambda _: conditions.result()))

        tree = None
        if is_of_form:
            tree = _sound_tree(connection, progress, second, check)
        else:
            check()
    if tree is None or storage:
        return False
    reader.last, reader.frontier = tree.size, tree
    return True


def _sound_tree(
    connection: Connection, progress: Progress, second: Beside, check: Callable[[], None]
) -> Frontier | None:
    try:
        last = _last(connection)
    except TROUBLE:
        check()
        return None
    return sound_tree(connection, last, progress, second, check)


def _row_faults(
    connection: Connection, reader: Reader, progress: Progress, after: int
) -> Iterator[Fault]:
    last = reader.last = _last(connection)
    for first in range(after + 1, last + 1, CHUNK):
        done = min(first + CHUNK - 1, last)
        # What follows on a seal is compared row by row: there the storage was not looked at.
        if after or not passes(connection, reader, first, done):
            yield from chunk_faults(connection, reader, first, done)
        progress(done - after, last - after)
    yield from (Fault(seq, what) for seq, what in detail_faults(connection, last))
    yield from stray_faults(connection, last)
    yield from _tree_faults(connection, reader, after)


def _last(connection: Connection) -> int:
    """Return the number of the last entry; a few may be missing, strays far beyond do not count."""
    sizes = connection.exec_driver_sql(_SIZE).first()
    count, last, within = sizes or (0, 0, 0)
    return int(last if count <= last <= count + MOST_FAULTS // 2 else within or 0)


def _tree_faults(connection: Connection, reader: Reader, after: int) -> Iterator[Fault]:
    nodes = connection.exec_driver_sql(f"{_NODES_AFTER}{after}" if after else _NODES)
    stored: dict[Any, Any] = {(row[0], row[1]): row[2] for row in nodes}
    for height, place in stored.keys() - reader.nodes.keys():
        yield Fault(None, f"The tree has a node ({height}, {place}) that no entries complete.")
    unfit = {(0, seq - 1) for seq in reader.unfit}
    for height, place in sorted(reader.nodes):
        parts = {(height - 1, 2 * place), (height - 1, 2 * place + 1)}
        # What stands over something unfit is unfit too; only the lowest is told.
        is_known = not unfit.isdisjoint(parts)
        is_unfit = stored.get((height, place)) != reader.nodes[height, place]
        if is_known or is_unfit:
            unfit.add((height, place))
        if is_unfit and not is_known:
            first, width = (place << height) + 1, 1 << height
            yield Fault(
                first,
                f"The tree's node over entries {first} to {first + width - 1} does not fit them.",
            )
