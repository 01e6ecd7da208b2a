"""Renew all that is generated, with one command: ``python -m tests.renew``.

Guarantees: the version, the schema that every book is made with, the book of this version that is
kept for the tests of upgrading, the guide's page of all commands and the golden texts are written
anew from the code, in that order. Refuses: to touch the book of a version that is past. What it
wrote is to be read before it is kept.
"""

import os
import re
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.claims import guide_reference, man_page

ROOT = Path(__file__).parents[1]
CONNECTIONS = ROOT / "ledger/store/engine/connections.py"
MIGRATIONS = ROOT / "ledger/store/migrations/versions"
SCHEMA = ROOT / "ledger/store/form/schema.sql"
OLD_BOOKS = ROOT / "tests/migrations"
_VERSION = re.compile(r"^SCHEMA_VERSION = \d+$", re.MULTILINE)


def newest_migration(names: list[str]) -> int:
    """Return the number of the newest of the migrations' files.

    >>> newest_migration(["m0001_first_form.py", "m0012_more.py", "env.py"])
    12
    """
    return max(int(name[1:5]) for name in names if re.match(r"m\d{4}_", name))


def with_version(source: str, version: int) -> str:
    """Return the source of the connections with the version of the newest migration in it.

    >>> with_version("SCHEMA_VERSION = 4", 5)
    'SCHEMA_VERSION = 5'
    """
    return _VERSION.sub(f"SCHEMA_VERSION = {version}", source)


def renew_version() -> int:
    """Write the number of the newest migration as the version, and return it."""
    version = newest_migration([path.name for path in MIGRATIONS.glob("*.py")])
    CONNECTIONS.write_text(with_version(CONNECTIONS.read_text("utf-8"), version), "utf-8")
    return version


def renew_book(version: int) -> None:
    """Write the schema of a new book, and a book of this version with a row in every table."""
    from ledger.store.engine.connections import connected, writing
    from ledger.store.form.migrate import migrate
    from ledger.store.form.schema import stored_schema
    from tests.conftest import new_keeper
    from tests.keeper import MORNING
    from tests.path import fill_every_table

    with TemporaryDirectory() as folder:
        with connected(str(Path(folder) / "form.db")) as engine, writing(engine) as connection:
            migrate(connection)
            SCHEMA.write_text(stored_schema(connection), "utf-8")
        with new_keeper(str(Path(folder) / "book.db")) as keeper:
            keeper.clock.now = MORNING
            fill_every_table(keeper)
        (OLD_BOOKS / f"v{version}.sql").write_text(dumped(keeper.book.where, version), "utf-8")


def dumped(where: str, version: int) -> str:
    """Return a book as SQL, with the marks of its header, which a dump leaves out."""
    with closing(sqlite3.connect(where)) as client:
        mark = client.execute("PRAGMA application_id").fetchone()[0]
        head = [f"PRAGMA application_id = {mark};", f"PRAGMA user_version = {version};"]
        return "\n".join([*head, *client.iterdump(), ""])


def golden_tests() -> list[str]:
    """Return the files of the tests that compare with golden texts, themselves or by a helper."""
    texts = {path: path.read_text("utf-8") for path in sorted((ROOT / "tests").rglob("*.py"))}
    helpers = [
        ".".join(path.relative_to(ROOT).with_suffix("").parts)
        for path, text in texts.items()
        if "check_golden(" in text and not path.name.startswith("test_")
    ]
    ways = ("check_golden(", *(f"from {helper} import " for helper in helpers))
    tests = (path for path in texts if path.name.startswith("test_"))
    return [str(path) for path in tests if any(way in texts[path] for way in ways)]


def main() -> int:
    """Renew everything; return the exit code of the tests that write the golden texts."""
    renew_book(renew_version())
    guide_reference.renew()
    man_page.renew()
    command = [sys.executable, "-m", "pytest", "-q", "-n", "2", *golden_tests()]
    return subprocess.call(command, cwd=ROOT, env={**os.environ, "POTTLE_GOLDEN": "write"})


if __name__ == "__main__":
    sys.exit(main())
