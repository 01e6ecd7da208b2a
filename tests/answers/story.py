"""A story as a book is told it: commands, one a line, with the lots and entries that they name.

Guarantees: each command is run at a time that the story sets, whatever became of those before it.
"""

import re
import shlex
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

from tests.answers.said import Said, run
from tests.cli.shell import Shell
from tests.keeper import SetClock

MINUTES_APART = 5
_SPANS = {"d": "days", "h": "hours", "m": "minutes"}
_LINE = re.compile(r"(?:(?P<name>\w+) = |(?P<refused>! ))?(?P<command>.+)")


def told(story: str, shell: Shell, clock: SetClock) -> Iterator[Said]:
    """Run a story's commands and yield what each says; the clock goes on as the story has it."""
    for line in story.splitlines():
        if line.startswith("#") or not line:
            continue
        if line.startswith("+"):
            clock.forward(**{_SPANS[line[-1]]: int(line[1:-1])})
            continue
        found = _LINE.fullmatch(line)
        assert found
        clock.now += timedelta(minutes=MINUTES_APART)
        before = _last(shell.book) if found["name"] else (0, "")
        words = shlex.split(found["command"].format(**shell.codes))
        said = run(shell, words)
        if found["name"]:
            after = _last(shell.book)
            shell.codes[found["name"]] = after[1] if after[1] != before[1] else str(before[0] + 1)
        yield replace(said, is_wrong=bool(found["refused"]))


def _last(book: Path) -> tuple[int, str]:
    """Return the number of the last entry and the code of the last lot."""
    if not book.exists():
        return 0, ""
    with closing(sqlite3.connect(book)) as connection:
        entries = connection.execute("SELECT max(seq) FROM entry").fetchone()[0]
        code = connection.execute("SELECT code FROM lot ORDER BY id DESC LIMIT 1").fetchone()
    return int(entries), code[0] if code else ""
