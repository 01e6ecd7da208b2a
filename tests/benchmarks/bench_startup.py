"""How long a command takes to start, against a bare interpreter and the least command there is.

The goal of a command is against what was thought the least when it was set: Typer, and SQLAlchemy's
Core to read a row. A book's file is read without that now; the least without it is told beside.
"""

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
CORE_READ = """
import typer
from sqlalchemy import create_engine, text

def show():
    with create_engine({where!r}).connect() as connection:
        print(connection.execute(text('SELECT * FROM entry LIMIT 1')).fetchone())

typer.run(show)
"""
"""The same by SQLAlchemy's Core."""


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
        core = process_seconds(["-c", CORE_READ.format(where=f"sqlite:///{where}")])
        help_ = process_seconds(["-m", "cli.program", "--help"])
        note = process_seconds(["-m", "cli.program", "note", "-", "bench"], env=env)
    line("pottle --help / python -c pass", help_ / bare, "at most 7")
    line("one bench command / Typer + Core reading a row", note / core, "at most 1.25")
    line("   the least of Typer that reads a row by sqlite3", note / read, "")


if __name__ == "__main__":
    main()
