"""How long a command takes to start, against a bare interpreter and the least command there is."""

import os
import tempfile
from pathlib import Path

from ledger.service.masters.house import init
from tests.benchmarks.ratios import line, process_seconds

BARE_READ = """
import sqlite3, typer

def show():
    connection = sqlite3.connect({where!r})
    print(connection.execute('SELECT * FROM entry LIMIT 1').fetchone())
    connection.close()

typer.run(show)
"""
"""The least program of Typer's that reads a row: what any command has to load."""


def main() -> None:
    """Print the ratios."""
    with tempfile.TemporaryDirectory() as folder:
        where = Path(folder) / "pottle.db"
        init(str(where), name="Bench", currency="EUR", by=None).close()
        env = {**os.environ, "POTTLE_LEDGER": str(where), "POTTLE_BY": "AB"}
        person = ["-m", "cli.program", "person", "add", "AB", "Ada Brook"]
        process_seconds(person, 1, env=env)
        bare = process_seconds(["-c", "pass"])
        read = process_seconds(["-c", BARE_READ.format(where=str(where))])
        help_ = process_seconds(["-m", "cli.program", "--help"])
        note = process_seconds(["-m", "cli.program", "note", "-", "bench"], env=env)
    line("pottle --help / python -c pass", help_ / bare, "at most 7")
    line("one bench command / the least of Typer that reads a row", note / read, "at most 1.25")


if __name__ == "__main__":
    main()
