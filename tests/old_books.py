"""Books of every past version, as they were kept when that version was new.

Guarantees: each is a dump with the marks of its header. `python -m tests.renew` writes the one of
the present version; a book whose version is past does not change any more.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from ledger.store.engine.connections import SCHEMA_VERSION
from tests.domain.evidence import rfc6962

FOLDER = Path(__file__).parent / "migrations"


@dataclass(frozen=True, slots=True)
class OldBook:
    """A book of a past version."""

    version: int

    def put(self, where: Path | str) -> str:
        """Make the file anew and return its path."""
        Path(where).write_bytes(_file(self.version))
        return str(where)

    def bodies(self) -> list[bytes]:
        """Return the texts of its entries, read by the engine alone."""
        return list(_bodies(self.version))

    @property
    def entries(self) -> int:
        """How many entries it has."""
        return len(_bodies(self.version))

    @property
    def root(self) -> str:
        """Its root, by a reader written from the RFC's definitions alone."""
        return _root(self.version)


@contextmanager
def _played(version: int) -> Iterator[sqlite3.Connection]:
    """Play a dump."""
    with closing(sqlite3.connect(":memory:")) as client:
        client.executescript((FOLDER / f"v{version}.sql").read_text(encoding="utf-8"))
        yield client


@cache
def _file(version: int) -> bytes:
    with _played(version) as client:
        return client.serialize()


@cache
def _bodies(version: int) -> tuple[bytes, ...]:
    with _played(version) as client:
        found = client.execute("SELECT body FROM entry ORDER BY seq")
        return tuple(body.encode() for (body,) in found)


@cache
def _root(version: int) -> str:
    return rfc6962.tree_hash(list(_bodies(version))).hex()


OLD_BOOKS = tuple(map(OldBook, range(1, SCHEMA_VERSION)))
"""All of them, the oldest first."""
