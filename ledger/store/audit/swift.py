"""Telling swiftly whether all rows of a book fit, so that they need not be compared one by one.

Guarantees: says that a book is sound only if comparing row by row would find nothing, given that
its form and storage are found whole too; in memory that does not grow with the book. Refuses: to
tell what is wrong; then the slow comparison is asked.
"""

import re
from collections import deque
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Future
from contextlib import contextmanager
from datetime import date, datetime
from functools import partial
from hashlib import sha256
from typing import Any

from sqlalchemy import Connection

from ledger.domain.entries import FACTS
from ledger.domain.evidence.merkle import Frontier
from ledger.store.audit.beside import Beside
from ledger.store.audit.details import detail_faults
from ledger.store.audit.file import TROUBLE
from ledger.store.audit.texts import fitting, moments
from ledger.store.engine.statements import ask, ask_column
from ledger.store.form.tables import CHILDREN, LOT, METADATA, TREE

CHUNK = 8192
"""How many entries are looked at together."""
_DAY = re.compile(rb"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_TIME = re.compile(rb"T([01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9]Z")
_ENDS = " UNION ALL ".join(
    'SELECT MIN({0}), MAX({0}) FROM "{1}"'.format("id" if table is LOT else "seq", table.name)
    for table in METADATA.tables.values()
    if table is not TREE
)
"""The first and the last entry of which each table has rows."""
_KEYS = (("person_key", "person", "initials"), ("material_key", "material", "code"))
UNLIKE = (ValueError, TypeError, AttributeError)
"""What comes of cells that are not of the type the book keeps, as a damaged file may have them."""

Progress = Callable[[int, int], None]
"""Told how many entries of how many are done."""


def sound_tree(
    connection: Connection,
    last: int,
    progress: Progress,
    second: Beside,
    meanwhile: Callable[[], None] = lambda: None,
) -> Frontier | None:
    """Return the tree over a book's entries 1 to `last`; None if anything does not fit.

    Args:
        connection: A connection in a transaction that reads.
        last: Number of the last entry.
        progress: Told how far it is.
        second: Compares rows with texts, while texts are hashed here.
        meanwhile: What else is to be done here, once, while the second reader comes to its end.
    """
    waiting: deque[tuple[int, Future[bool]]] = deque()
    frontier = _grown(connection, last, progress, second, waiting)
    meanwhile()
    try:
        fits = all(_fits(waiting, last, progress) for _ in tuple(waiting))
    except (*TROUBLE, *UNLIKE):
        return None
    return frontier if fits else None


def _grown(
    connection: Connection,
    last: int,
    progress: Progress,
    second: Beside,
    waiting: deque[tuple[int, Future[bool]]],
) -> Frontier | None:
    """Hash all texts; parts that the second reader has yet to compare are left in `waiting`."""
    frontier = Frontier()
    try:
        if not _belongs(connection, last):
            return None
        for first in range(1, last + 1, CHUNK):
            done = min(first + CHUNK - 1, last)
            # The second reader may see a later moment: it is asked only for entries that were
            # seen here, which never change.
            part = second.ask(partial(rows_fit, first=first, last=done))
            waiting.append((done, part))
            if not _tree_fits(connection, frontier, first, done):
                return None
            while waiting and waiting[0][1].done():
                if not _fits(waiting, last, progress):
                    return None
    except (*TROUBLE, *UNLIKE):
        return None
    return frontier


def _fits(waiting: deque[tuple[int, Future[bool]]], last: int, progress: Progress) -> bool:
    """Wait for the first part that is being compared; tell whether it fits."""
    compared, part = waiting.popleft()
    fits = part.result()
    progress(compared, last)
    return fits


def _belongs(connection: Connection, last: int) -> bool:
    """Tell whether no table has rows of no entry, and keys are those of the first that has them."""
    for least, most in connection.exec_driver_sql(_ENDS):
        if least is not None and not 1 <= least <= most <= last:
            return False
    (nodes,) = _row(connection, "SELECT COUNT(*) FROM tree")
    strays = [
        f'SELECT 1 FROM "{kind}_{name}" c LEFT JOIN "{kind}" t ON t.seq = c.seq WHERE t.seq IS NULL'
        for kind, name in CHILDREN
    ]
    for key, kind, column in _KEYS:
        kept = f"SELECT {column}, seq FROM {key}"
        said = f"SELECT {column}, MIN(seq) FROM {kind} GROUP BY {column}"
        strays += [f"{kept} EXCEPT {said}", f"{said} EXCEPT {kept}"]
    # Over n leaves stand n complete nodes, less the number of ones in n written in binary.
    return (
        nodes == last - last.bit_count()
        and not any(connection.exec_driver_sql(query).first() for query in strays)
        and not any(detail_faults(connection, last))
    )


def _row(connection: Connection, query: str) -> Sequence[Any]:
    return connection.exec_driver_sql(query).one()


def leaves(connection: Connection, first: int, last: int) -> list[bytes] | None:
    """Return the hashes of texts; None if one is missing or is not the stored one.

    Raises:
        ValueError: A text is no UTF-8, or a moment is none.
    """
    query = (
        "SELECT seq, body, leaf, happened_at, recorded_at FROM entry "
        "WHERE seq BETWEEN :first AND :last ORDER BY seq"
    )
    with _as_bytes(connection):
        cells = ask(connection, query, first=first, last=last)
    if connection.dialect.name != "sqlite":
        cells = [(seq, t.encode(), leaf, h.encode(), r.encode()) for seq, t, leaf, h, r in cells]
    seqs, texts, stored, happened, recorded = zip(*cells, strict=True) if cells else ((),) * 5
    if seqs != tuple(range(first, last + 1)):
        return None
    # All at once: no letter goes over a line's end, so they are UTF-8 if each of them is.
    b"\n".join(texts).decode()
    found = [sha256(b"\x00" + text).digest() for text in texts]
    if found != list(stored):
        return None
    return found if _are_instants((*happened, *recorded)) else None


@contextmanager
def _as_bytes(connection: Connection) -> Iterator[None]:
    """Read text as its bytes where the engine lets us; it is hashed as such."""
    driver: Any = connection.connection.driver_connection
    if connection.dialect.name != "sqlite":
        yield
        return
    kept, driver.text_factory = driver.text_factory, bytes
    try:
        yield
    finally:
        driver.text_factory = kept


def _are_instants(texts: Sequence[bytes]) -> bool:
    """Tell whether all texts are moments as the book writes them.

    A book has far fewer days and times of day than moments, so each of these is looked at once.

    Raises:
        ValueError: There is no such day.
    """
    days, times = {text[:10] for text in texts}, {text[10:] for text in texts}
    return all(map(_TIME.fullmatch, times)) and all(map(_is_day, days))


def _is_day(text: bytes) -> bool:
    return bool(_DAY.fullmatch(text) and date.fromisoformat(text.decode()))


def _tree_fits(connection: Connection, frontier: Frontier, first: int, last: int) -> bool:
    """Grow the tree by some texts; tell whether their hashes and nodes are those stored."""
    found = leaves(connection, first, last)
    if found is None:
        return False
    query = (
        "SELECT hash FROM tree WHERE height = :height AND place BETWEEN :first AND :last "
        "ORDER BY place"
    )
    for height, place, nodes in frontier.extend(found):
        places = {"first": place, "last": place + len(nodes) - 1}
        if ask_column(connection, query, height=height, **places) != nodes:
            return False
    return True


def rows_fit(connection: Connection, first: int, last: int) -> bool:
    """Tell whether the rows of entries are what their texts say, and no more."""
    opened = told = 0
    for kind in FACTS:
        count, fit, opens = _counts(connection, kind, first, last)
        if count != fit:
            return False
        told, opened = told + fit, opened + opens
    (lots,) = _row(connection, f"SELECT COUNT(*) FROM lot WHERE id BETWEEN {first} AND {last}")
    return (
        told == last - first + 1
        and opened == lots
        and all(_moments_fit(connection, kind, first, last) for kind in FACTS)
    )


def _counts(connection: Connection, kind: str, first: int, last: int) -> Sequence[Any]:
    query = fitting(kind, connection.dialect.name)
    if connection.dialect.name == "sqlite":  # which keeps a statement prepared by its words
        return connection.exec_driver_sql(query.format(first="?1", last="?2"), (first, last)).one()
    return connection.exec_driver_sql(
        # Without parameters the driver leaves the per cent signs of format() alone.
        query.format(first=first, last=last),
        execution_options={"no_parameters": True},
    ).one()


def _moments_fit(connection: Connection, kind: str, first: int, last: int) -> bool:
    """Tell whether the moments and days in a kind's facts are such, as the book writes them."""
    for name, shape in moments(FACTS[kind]):
        texts = connection.exec_driver_sql(
            f'SELECT {name} FROM "{kind}" '
            f"WHERE seq BETWEEN {first} AND {last} AND {name} IS NOT NULL"
        ).scalars()
        if shape is datetime:
            if not _are_instants([text.encode() for text in texts]):
                return False
        elif any(date.fromisoformat(text).isoformat() != text for text in texts):
            return False
    return True
