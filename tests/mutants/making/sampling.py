"""Mutants: what they are, and which of them are tried.

Guarantees: the same seed draws the same mutants from the same source.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from random import Random

from tests.mutants.making.places import Place, changed, is_fault, places


@dataclass(frozen=True, slots=True)
class Mutant:
    """A module with one fault."""

    file: str
    place: Place
    before: str
    """The text of the module."""

    @property
    def text(self) -> str:
        """The text with the fault."""
        return changed(self.before, self.place)

    @property
    def line(self) -> int:
        """The number of the line in which it stands."""
        return self.before.count("\n", 0, self.place.start) + 1

    @property
    def old_line(self) -> str:
        """That line, without what is around it."""
        return self.before.splitlines()[self.line - 1].strip()

    @property
    def new_line(self) -> str:
        """That line with the fault, without what is around it."""
        return self.text.splitlines()[self.line - 1].strip()

    @property
    def change(self) -> str:
        """What is changed into what, in one line."""
        old = self.before[self.place.start : self.place.end]
        return " ".join(f"{old} -> {self.place.new}".split())

    @property
    def diff(self) -> list[str]:
        """The lines that are changed, and what they are changed into."""
        first = self.line - 1
        last = self.before.count("\n", 0, self.place.end)
        old, new = self.before.splitlines(), self.text.splitlines()
        after = last + 1 + len(new) - len(old)
        told = [f"- {line.strip()}" for line in old[first : last + 1]]
        return told + [f"+ {line.strip()}" for line in new[first:after]]


def drawn(files: Iterable[tuple[str, str]], count: int, seed: int) -> tuple[list[Mutant], int]:
    """Draw mutants of files, each with its text; return them and how many places there are."""
    found = [Mutant(file, place, text) for file, text in files for place in places(text)]
    Random(seed).shuffle(found)
    return list(_first(found, count)), len(found)


def _first(mutants: Iterable[Mutant], count: int) -> Iterator[Mutant]:
    left = count
    for mutant in mutants:
        if not left:
            return
        if is_fault(mutant.before, mutant.place):
            left -= 1
            yield mutant


def texts(files: Iterable[str], root: Path) -> Iterator[tuple[str, str]]:
    """Yield files with their texts."""
    for file in files:
        yield file, (root / file).read_bytes().decode()
