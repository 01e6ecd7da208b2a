"""Books of every past version, as they were kept when that version was new.

Guarantees: each is a dump with the marks of its header. `python -m tests.renew` writes the one of
the present version; a book whose version is past does not change any more.
"""

import sqlite3
from contextlib import closing
from dataclasses import dataclass
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
        dump = FOLDER / f"v{self.version}.sql"
        with closing(sqlite3.connect(where)) as client:
            client.executescript(dump.read_text(encoding="utf-8"))
        return str(where)

    def bodies(self) -> list[bytes]:
        """Return the texts of its entries, read by the engine alone."""
        with closing(sqlite3.connect(":memory:")) as client:
            client.executescript((FOLDER / f"v{self.version}.sql").read_text(encoding="utf-8"))
            return [
                body.encode() for (body,) in client.execute("SELECT body FROM entry ORDER BY seq")
            ]

    @property
    def entries(self) -> int:
        """How many entries it has."""
        return len(self.bodies())

    @property
    def root(self) -> str:
        """Its root, by a reader written from the RFC's definitions alone."""
        return rfc6962.tree_hash(self.bodies()).hex()


OLD_BOOKS = tuple(map(OldBook, range(1, SCHEMA_VERSION)))
"""All of them, the oldest first."""
