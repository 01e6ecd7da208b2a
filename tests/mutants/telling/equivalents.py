"""Mutants that change nothing anybody could see, listed by hand in `equivalents.toml`.

Guarantees: one is known again by its file, the text of its line and what that becomes, wherever the
line stands; `*` in these stands for anything. Such a mutant is not tried and counts for nothing.
"""

import re
import tomllib
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from tests.mutants.making.sampling import Mutant

LISTED = Path(__file__).with_name("equivalents.toml")


@dataclass(frozen=True, slots=True)
class Equivalent:
    """A mutant that changes nothing, or many of one sort."""

    file: str
    line: str
    """The line without what is around it."""
    becomes: str
    """The line with the fault; of a change of several lines both are the first."""
    reason: str
    """Why nobody could see it."""

    def is_of(self, mutant: Mutant) -> bool:
        """Say whether a mutant is this one."""
        return (
            _fits(self.file, mutant.file)
            and _fits(self.line, mutant.old_line)
            and _fits(self.becomes, mutant.new_line)
        )


def listed(text: str) -> list[Equivalent]:
    """Read a list; raises TypeError where a mutant is not told whole."""
    return [Equivalent(**mutant) for mutant in tomllib.loads(text).get("mutant", ())]


def reason_of(mutant: Mutant, known: Iterable[Equivalent]) -> str | None:
    """Return why a mutant changes nothing, or None if it may change something."""
    return next((one.reason for one in known if one.is_of(mutant)), None)


def _fits(pattern: str, text: str) -> bool:
    return re.fullmatch(".*".join(map(re.escape, pattern.split("*"))), text) is not None
