"""The map of lines and tests as it is kept, and renewed test file by test file.

Guarantees: what a test file runs is of its last run in which it was noted; a line is known together
with the text of its module, so lines of a module that was changed since count for nothing. Refuses:
to guess what runs such a module now; `lacking` names the test files that have to be noted anew.
"""

import json
import sqlite3
from collections.abc import Iterable, Mapping
from functools import cache
from pathlib import Path

from tests.mutants.trying.mapping import IMPORT, Map, Timed

TABLES = """
CREATE TABLE IF NOT EXISTS file (name TEXT PRIMARY KEY, key TEXT NOT NULL);
CREATE TABLE IF NOT EXISTS test (
    name TEXT PRIMARY KEY, file TEXT NOT NULL, seconds REAL NOT NULL, uses TEXT NOT NULL);
CREATE TABLE IF NOT EXISTS fixture (name TEXT PRIMARY KEY, seconds REAL NOT NULL);
CREATE TABLE IF NOT EXISTS ran (
    unit TEXT NOT NULL, source TEXT NOT NULL, text TEXT NOT NULL, context TEXT NOT NULL,
    lines BLOB NOT NULL);
CREATE INDEX IF NOT EXISTS ran_source ON ran (source);
CREATE INDEX IF NOT EXISTS ran_unit ON ran (unit);
"""
"""A unit is a test file, a shared fixture, or the import; what it ran is replaced together."""
NOTED = (
    "SELECT file.path, context.context, line_bits.numbits FROM noted.line_bits line_bits "
    "JOIN noted.file file ON file.id = line_bits.file_id "
    "JOIN noted.context context ON context.id = line_bits.context_id"
)
"""The lines as Coverage keeps them."""


class Kept:
    """A map in a file."""

    def __init__(self, path: Path, keys: Mapping[str, str], texts: Mapping[str, str]) -> None:
        """Open a map, or begin one.

        Args:
            path: The file.
            keys: All test files as they are now, as `near.keys` tells.
            texts: All modules of the source as they are now, by hash.
        """
        path.parent.mkdir(parents=True, exist_ok=True)
        self._db = sqlite3.connect(path)
        self._db.executescript(TABLES)
        self._keys, self._texts = keys, texts

    def close(self) -> None:
        """Close the file."""
        self._db.close()

    def known(self) -> set[str]:
        """Return the test files that are kept as they are now."""
        rows = self._db.execute("SELECT name, key FROM file")
        return {name for name, key in rows if self._keys.get(name) == key}

    def store(self, notes: Path, files: Iterable[str]) -> None:
        """Keep what a run of whole test files noted, in the place of what was kept of them.

        Args:
            notes: The folder with its notes: the tests, and `lines` as Coverage keeps them.
            files: The test files.
        """
        told = json.loads((notes / "tests.json").read_text(encoding="utf-8"))
        self._db.execute("ATTACH ? AS noted", (str(notes / "lines"),))
        try:
            with self._db:
                self._replace(told, list(files))
        finally:
            self._db.execute("DETACH noted")

    def _replace(self, told: dict[str, dict[str, dict[str, object]]], files: list[str]) -> None:
        prefix, run = f"{told['copy']}/", self._db.executemany
        rows = [
            (unit_of(context), source, self._texts[source], context, lines)
            for path, context, lines in self._db.execute(NOTED)
            if context and (source := path.removeprefix(prefix)) in self._texts
        ]
        run("DELETE FROM ran WHERE unit = ?", {(name,) for name in (*files, *(r[0] for r in rows))})
        run("INSERT INTO ran VALUES (?, ?, ?, ?, ?)", rows)
        run("DELETE FROM test WHERE file = ?", [(name,) for name in files])
        run(
            "INSERT OR REPLACE INTO test VALUES (?, ?, ?, ?)",
            [
                (name, name.split("::")[0], test["seconds"], json.dumps(test["uses"]))
                for name, test in told["tests"].items()
            ],
        )
        run("INSERT OR REPLACE INTO fixture VALUES (?, ?)", told["wide"].items())
        run("INSERT OR REPLACE INTO file VALUES (?, ?)", [(n, self._keys[n]) for n in files])

    def map(self) -> Map:
        """Return the map of the test files that are kept as they are now."""
        known = self.known()
        tests = {
            name: Timed(seconds, frozenset(json.loads(uses)))
            for name, file, seconds, uses in self._db.execute("SELECT * FROM test")
            if file in known
        }

        @cache
        def contexts(source: str) -> Mapping[int, list[str]]:
            return self._lines(source)

        return Map(tests, contexts, dict(self._db.execute("SELECT * FROM fixture").fetchall()))

    def _lines(self, source: str) -> Mapping[int, list[str]]:
        found: dict[int, list[str]] = {}
        rows = self._db.execute(
            "SELECT context, lines FROM ran WHERE source = ? AND text = ?",
            (source, self._texts[source]),
        )
        for context, lines in rows:
            for line in numbers(lines):
                found.setdefault(line, []).append(context)
        return found

    def lacking(self, source: str) -> set[str]:
        """Return the test files that are to be noted before all that runs a module is known.

        Those that are new or changed, and those that ran it when it had another text. What never
        ran it and is as it was is taken not to run it: were that wrong, a mutant would be told as
        a survivor that is none, so a score is never too high for it.
        """
        return self.stale(source) | (self._keys.keys() - self.known())

    def stale(self, source: str) -> set[str]:
        """Return the test files that ran a module when it had another text."""
        units = self._db.execute(
            "SELECT DISTINCT unit FROM ran WHERE source = ? AND text <> ?",
            (source, self._texts[source]),
        )
        return {self._file_of(unit) for (unit,) in units} & self._keys.keys()

    def quickest(self, files: Iterable[str], seconds: float) -> set[str]:
        """Return test files that took no longer together, the quickest; new ones took nothing."""
        told = dict(
            self._db.execute("SELECT file, sum(seconds) FROM test GROUP BY file").fetchall()
        )
        found, left = set(), seconds
        for name in sorted(files, key=lambda name: (told.get(name, 0.0), name)):
            left -= told.get(name, 0.0)
            if left < 0:
                break
            found.add(name)
        return found

    def _file_of(self, unit: str) -> str:
        """Return the test file by which a unit is noted: itself, or the quickest that uses it."""
        word, _, name = unit.partition(" ")
        uses = f'%"{name}"%' if word == "fixture" else "%"
        if word not in ("fixture", IMPORT):
            return unit
        row = self._db.execute(
            "SELECT file FROM test WHERE uses LIKE ? GROUP BY file ORDER BY sum(seconds)", (uses,)
        ).fetchone()
        return row[0] if row else ""


def numbers(bits: bytes) -> list[int]:
    """Return the lines that Coverage keeps as bits, eight a byte, the least first.

    >>> numbers(bytes([0b110, 0b1]))
    [1, 2, 8]
    """
    return [8 * at + bit for at, byte in enumerate(bits) for bit in range(8) if byte >> bit & 1]


def unit_of(context: str) -> str:
    """Return with what a context is replaced.

    >>> unit_of("test tests/test_house.py::test_b"), unit_of("fixture tests::book")
    ('tests/test_house.py', 'fixture tests::book')
    >>> unit_of("file tests/test_house.py"), unit_of("import")
    ('tests/test_house.py', 'import')
    """
    word, _, name = context.partition(" ")
    if word == "test":
        return name.split("::")[0]
    return name if word == "file" else context
