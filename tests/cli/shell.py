"""The command in a test: run in the same process on a book of the test's own."""

import json
import shlex
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

from typer import testing
from typer.testing import CliRunner

from cli.main import app

# The tree of commands holds nothing of a call; to make it anew for each took a third of a call.
testing._get_command = cache(testing._get_command)  # type: ignore[attr-defined]

BY = "AB"
"""Who writes in these tests."""


@dataclass(frozen=True, slots=True)
class Answer:
    """What a command said and how it ended."""

    exit_code: int
    out: str
    err: str

    @property
    def lines(self) -> list[str]:
        return self.out.splitlines()

    @property
    def complaints(self) -> list[str]:
        return self.err.splitlines()

    @property
    def json(self) -> Any:
        return json.loads(self.out)


@dataclass(slots=True)
class Shell:
    """Runs commands on a book."""

    book: Path
    by: str | None = BY
    codes: dict[str, str] = field(default_factory=dict)

    def run(self, *args: str, given: str | None = None) -> Answer:
        """Run a command, with a text on its standard input."""
        env = {"POTTLE_LEDGER": str(self.book), "POTTLE_BY": self.by, "POTTLE_DEBUG": None}
        done = CliRunner().invoke(app, list(args), input=given, env=env, prog_name="pottle")
        return Answer(done.exit_code, done.stdout, done.stderr)

    def line(self, command: str) -> Answer:
        """Run a command written as in a shell, lots named by nickname in braces."""
        return self.run(*shlex.split(command.format(**self.codes)))

    def bench(self, *lines: str, on: str = "") -> Answer:
        """Hand lines to the bench, lots named by nickname in braces."""
        told = "".join(f"{line}\n" for line in lines).format(**self.codes)
        return self.run("bench", *([self.codes[on]] if on else []), given=told)

    def entries(self) -> int:
        """Return how many entries the book has."""
        with closing(sqlite3.connect(self.book)) as connection:
            return int(connection.execute("SELECT count(*) FROM entry").fetchone()[0])


def walk(shell: Shell, path: tuple[tuple[str, str], ...]) -> Iterator[tuple[str, Answer]]:
    """Run a path's commands in turn; those with a nickname open a lot and answer as JSON."""
    for nickname, command in path:
        answer = shell.line(f"{command} --json" if nickname else command)
        if nickname and answer.exit_code == 0:
            shell.codes[nickname] = answer.json["code"]
        yield command, answer
