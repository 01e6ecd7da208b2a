"""How long a command takes to start, against a bare interpreter and a bare read."""

import os
import tempfile
from pathlib import Path

from ledger.service.masters.house import init
from tests.benchmarks.ratios import line, process_seconds

BARE_READ = """
import typer, sqlalchemy
from sqlalchemy import create_engine, text
with create_engine('sqlite:///{where}').connect() as c:
    c.execute(text('SELECT * FROM entry LIMIT 1')).first()
"""


def main() -> None:
    """Print the ratios."""
    with tempfile.TemporaryDirectory() as folder:
        where = Path(folder) / "pottle.db"
        init(str(where), name="Bench", currency="EUR", by=None).close()
        env = {**os.environ, "POTTLE_LEDGER": str(where), "POTTLE_BY": "AB"}
        person = ["-m", "cli.program", "person", "add", "AB", "Ada Brook"]
        process_seconds(person, 1, env=env)
        bare = process_seconds(["-c", "pass"])
        read = process_seconds(["-c", BARE_READ.format(where=where)])
        help_ = process_seconds(["-m", "cli.program", "--help"])
        note = process_seconds(["-m", "cli.program", "note", "-", "bench"], env=env)
    line("pottle --help / python -c pass", help_ / bare, "at most 7")
    line("one bench command / Typer + Core reading a row", note / read, "at most 1.25")


if __name__ == "__main__":
    main()
