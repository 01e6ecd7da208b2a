"""What a command says and makes, in lines: the screen, what it complains of, the files it wrote.

Guarantees: all of it stands there to the letter; of a paper every line of words and every rule with
its place, of other files their text. Refuses: the text of books and of copies of them, and how long
a drill took.
"""

import os
import re
import shlex
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from tests.answers.drawn import drawn
from tests.cli.shell import Answer, Shell

TEXTS = (".csv", ".json", ".txt")
_TAKEN = re.compile(r"(The drill took |\"took_ms\": )[\d.]+(?: s)?")


@dataclass(frozen=True, slots=True)
class Said:
    """A command that was run in the folder of its book."""

    words: tuple[str, ...]
    answer: Answer
    made: tuple[str, ...]
    """The lines of the files that it made."""
    is_wrong: bool = False
    """Whether it is told to be refused."""

    @property
    def verb(self) -> str:
        """The name of the command."""
        return self.words[0]

    def lines(self) -> Iterator[str]:
        """Yield the command and all that came of it."""
        yield f"$ pottle {shlex.join(self.words)}"
        yield from (_TAKEN.sub(r"\1SO LONG", line) for line in self.answer.lines)
        yield from (f"! {line}" for line in self.answer.complaints)
        if self.answer.exit_code:
            yield f"(exit code {self.answer.exit_code})"
        yield from self.made


@contextmanager
def in_folder(folder: Path) -> Iterator[None]:
    """Work in a folder."""
    before = Path.cwd()
    os.chdir(folder)
    try:
        yield
    finally:
        os.chdir(before)


def run(shell: Shell, words: Sequence[str]) -> Said:
    """Run a command and take up what it says and makes."""
    before = _files()
    answer = _answer(shell, words)
    made = sorted(Path(file) for file, changed in _files().items() if before.get(file) != changed)
    return Said(tuple(words), answer, tuple(line for path in made for line in _told(path)))


def _answer(shell: Shell, words: Sequence[str]) -> Answer:
    """Run a command; what stands behind <<< is its standard input, a semicolon ending a line."""
    if "<<<" not in words:
        return shell.run(*words)
    end = list(words).index("<<<")
    lines = words[end + 1].split(";")
    return shell.run(*words[:end], given="".join(f"{line.strip()}\n" for line in lines))


def _files() -> dict[str, int]:
    files = (f"{folder}/{name}" for folder, _, names in os.walk(".") for name in names)
    return {file: Path(file).stat().st_mtime_ns for file in files}


def _told(file: Path) -> Iterator[str]:
    if file.suffix == ".pdf":
        yield f"-- {file}"
        yield from drawn(file.read_bytes())
    elif file.suffix in TEXTS:
        yield f"-- {file}"
        yield from file.read_text(encoding="utf-8").splitlines()
