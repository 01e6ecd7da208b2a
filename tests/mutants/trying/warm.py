"""Runs of pytest in a folder, by a process that has the libraries loaded.

Guarantees: a run has a time, and its whole group of processes is ended when that is over.
"""

import json
import os
import select
import signal
import subprocess
import sys
from collections.abc import Mapping, Sequence
from contextlib import suppress
from pathlib import Path

from tests.mutants.making.tree import PLUGINS

GRACE = 20.0
"""Seconds for fixtures to take away what they made, when a run is ended."""

LIBRARIES = (
    *("pytest", "hypothesis", "hypothesis.strategies", "msgspec", "sqlalchemy", "psycopg"),
    *("sqlalchemy.dialects.sqlite", "sqlalchemy.dialects.postgresql", "alembic.command"),
    *("typer", "rich.table", "reportlab.pdfgen.canvas", "reportlab.platypus", "segno"),
    *("PIL.Image", "jsonschema", "networkx", "unittest.mock", "http.server"),
)
"""What most tests load."""


class Warm:
    """A process that runs pytest in one folder."""

    def __init__(
        self, folder: Path, environment: Mapping[str, str], libraries: Sequence[str] = LIBRARIES
    ) -> None:
        """Start it, and let it load libraries."""
        self._process = subprocess.Popen(
            [sys.executable, str(PLUGINS / "mutants_warm.py"), *libraries],
            cwd=folder,
            env=dict(environment),
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
            bufsize=1,
        )

    def run(self, arguments: Sequence[str], seconds: float) -> int | None:
        """Run pytest with arguments; return its exit code, or None if it had to be ended."""
        assert self._process.stdin is not None
        self._process.stdin.write(json.dumps(list(arguments)) + "\n")
        self._process.stdin.flush()
        child = int(self._line())
        if self._has_ended(seconds):
            return int(self._line())
        for sign, wait in ((signal.SIGINT, GRACE), (signal.SIGKILL, None)):
            with suppress(ProcessLookupError):
                os.killpg(child, sign)
            if self._has_ended(wait):
                break
        self._line()
        return None

    def close(self) -> None:
        """Let it end."""
        assert self._process.stdin is not None
        assert self._process.stdout is not None
        self._process.stdin.close()
        self._process.wait()
        self._process.stdout.close()

    def _has_ended(self, seconds: float | None) -> bool:
        assert self._process.stdout is not None
        return bool(select.select([self._process.stdout], [], [], seconds)[0])

    def _line(self) -> str:
        assert self._process.stdout is not None
        return self._process.stdout.readline()
