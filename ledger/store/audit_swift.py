"""Telling swiftly whether all rows of a book fit, so that they need not be compared one by one.

Guarantees: says that a book is sound only if comparing row by row would find nothing, given that
its form and storage were found whole before; in memory that does not grow with the book. Refuses:
to tell what is wrong; then the slow comparison is asked.
"""

import re
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from datetime import date, datetime
from hashlib import sha256
from typing import Any

from sqlalchemy import Connection

from ledger.domain.entries import FACTS
from ledger.domain.merkle import Frontier
from ledger.store.audit_file import TROUBLE
from ledger.store.audit_texts import fitting, moments
from ledger.store.tables import CHILDREN, LOT, METADATA, TREE

CHUNK = 8192
"""How many entries are looked at together."""
_INSTANT = re.compile(rb"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}Z")
_KEYS = (("person_key", "person", "initials"), ("material_key", "material", "code"))

Progress = Callable[[int, int], None]
"""Told how many entries of how many are done."""


def sound_tree(connection: Connection, last: int, progress: Progress) -> Frontier | None:
    """Return the tree over a book's entries 1 to `last`; None if anything does not fit."""
    frontier = Frontier()
    try:
        if not _belongs(connection, last):
            return None
        for first in range(1, last + 1, CHUNK):
            done = min(first + CHUNK - 1, last)
            if not _fits(connection, frontier, first, done):
                return None
            progress(done, last)
    except (*TROUBLE, ValueError):
        return None
    return frontier


def _belongs(connection: Connection, last: int) -> bool:
    """Tell whether no table has rows of no entry, and keys are those of the first that has them."""
    for table in METADATA.tables.values():
        if table is TREE:
            continue
        seq = "id" if table is LOT else "seq"
        least, most = _row(connection, f'SELECT MIN({seq}), MAX({seq}) FROM "{table.name}"')
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
    return nodes == last - last.bit_count() and not any(
        connection.exec_driver_sql(query).first() for query in strays
    )


def _row(connection: Connection, query: str) -> Sequence[Any]:
    return connection.exec_driver_sql(query).one()


def _fits(connection: Connection, frontier: Frontier, first: int, last: int) -> bool:
    leaves = _leaves(connection, first, last)
    return (
        leaves is not None
        and _tree_fits(connection, frontier, leaves)
        and _rows_fit(connection, first, last)
        and all(_moments_fit(connection, kind, first, last) for kind in FACTS)
    )


def _leaves(connection: Connection, first: int, last: int) -> list[bytes] | None:
    """Return the hashes of texts; None if one is missing or is not the stored one.

    Raises:
        ValueError: A text is no UTF-8, or a moment is none.
    """
    with _as_bytes(connection):
        found = connection.exec_driver_sql(
            "SELECT seq, body, leaf, happened_at, recorded_at FROM entry "
            f"WHERE seq BETWEEN {first} AND {last} ORDER BY seq"
        ).all()
    seqs, texts, stored, happened, recorded = zip(*found, strict=True) if found else ((),) * 5
    if seqs != tuple(range(first, last + 1)):
        return None
    bodies = [_bytes(text) for text in texts]
    b"".join(bodies).decode()
    leaves = [sha256(b"\x00" + body).digest() for body in bodies]
    if leaves != list(stored):
        return None
    instants = {_bytes(text) for text in (*happened, *recorded)}
    return leaves if all(map(_is_instant, instants)) else None


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


def _bytes(text: bytes | str) -> bytes:
    return text if isinstance(text, bytes) else text.encode()


def _is_instant(text: bytes) -> bool:
    """Tell whether a text is a moment as the book writes it; raises ValueError for no moment."""
    return bool(_INSTANT.fullmatch(text) and datetime.fromisoformat(text.decode()))


def _tree_fits(connection: Connection, frontier: Frontier, leaves: list[bytes]) -> bool:
    """Grow the tree by some leaves; tell whether the nodes they complete are those stored."""
    levels: dict[int, list[bytes]] = {}
    places: dict[int, int] = {}
    for leaf in leaves:
        for height, place, node in frontier.add(leaf):
            places.setdefault(height, place)
            levels.setdefault(height, []).append(node)
    for height, nodes in levels.items():
        start = places[height]
        stored = connection.exec_driver_sql(
            f"SELECT hash FROM tree WHERE height = {height} "
            f"AND place BETWEEN {start} AND {start + len(nodes) - 1} ORDER BY place"
        )
        if [row[0] for row in stored] != nodes:
            return False
    return True


def _rows_fit(connection: Connection, first: int, last: int) -> bool:
    """Tell whether the rows of entries are what their texts say, and no more."""
    opened = told = 0
    for kind in FACTS:
        count, fit, opens = _counts(connection, kind, first, last)
        if count != fit:
            return False
        told, opened = told + fit, opened + opens
    (lots,) = _row(connection, f"SELECT COUNT(*) FROM lot WHERE id BETWEEN {first} AND {last}")
    return bool(told == last - first + 1 and opened == lots)


def _counts(connection: Connection, kind: str, first: int, last: int) -> Sequence[Any]:
    query = fitting(kind, connection.dialect.name)
    if connection.dialect.name == "sqlite":  # which keeps a statement prepared by its words
        return connection.exec_driver_sql(query.format(first="?1", last="?2"), (first, last)).one()
    return connection.exec_driver_sql(
        query.format(first=first, last=last), execution_options={"no_parameters": True}
    ).one()


def _moments_fit(connection: Connection, kind: str, first: int, last: int) -> bool:
    """Tell whether the moments and days in a kind's facts are such, as the book writes them."""
    for name, shape in moments(FACTS[kind]):
        found = connection.exec_driver_sql(
            f'SELECT {name} FROM "{kind}" '
            f"WHERE seq BETWEEN {first} AND {last} AND {name} IS NOT NULL"
        ).scalars()
        if shape is datetime:
            if not all(_is_instant(text.encode()) for text in found):
                return False
        elif any(date.fromisoformat(text).isoformat() != text for text in found):
            return False
    return True
