"""Books of every past version, as they were kept when that version was new.

Guarantees: each is what SQLite's shell calls a dump, with the marks of its header. Refuses: to be
changed; a version that is past does not change any more.
"""

import sqlite3
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True)
class OldBook:
    """A book of a past version."""

    version: int
    entries: int
    root: str

    def put(self, where: Path) -> str:
        """Make the file anew and return its path."""
        dump = Path(__file__).parent / "migrations" / f"v{self.version}.sql"
        with closing(sqlite3.connect(where)) as client:
            client.executescript(dump.read_text(encoding="utf-8"))
        return str(where)


OLD_BOOKS = (
    OldBook(1, 36, "2e46b5c8399f0f1f2a14e73aa5b3c472f99478626f85331d1e2ba47940d2755b"),
    OldBook(2, 57, "a0c36f9e644e132b5faf637504baf873dd96b10f27747e6a661b296a1a609181"),
    OldBook(3, 57, "a0c36f9e644e132b5faf637504baf873dd96b10f27747e6a661b296a1a609181"),
)
"""All of them, the oldest first."""
