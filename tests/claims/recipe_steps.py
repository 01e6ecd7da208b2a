"""Reading the recipes of DEVELOPERS.md, and doing what they say to a copy of the house.

Guarantees: a step is done exactly as it stands there, or the test that does it fails.
"""

import re
from dataclasses import dataclass
from pathlib import Path

_BLOCK = re.compile(r"^```(?P<sort>python|diff) (?P<file>\S+)\n(?P<text>.*?)^```$", re.M | re.S)
APART = "@@"
"""What stands in a diff between two places of one file."""


@dataclass(frozen=True, slots=True)
class Step:
    """One file of a recipe."""

    file: str
    """Which file."""
    is_new: bool
    """Whether it is new, and the text is all of it."""
    text: str
    """The text, or the lines that come, marked, among those that are there."""


def recipe(text: str, title: str) -> tuple[Step, ...]:
    """Return the steps of the recipe of a title, in their order."""
    _, _, after = text.partition(f"\n### {title}\n")
    told = re.split(r"^##+ ", after, maxsplit=1, flags=re.M)[0]
    return tuple(Step(m["file"], m["sort"] == "python", m["text"]) for m in _BLOCK.finditer(told))


def changed(source: str, diff: str) -> str:
    r"""Return a text with the lines of a diff put in and taken out where it says.

    >>> changed("a\nb\nc\n", " a\n-b\n+B\n@@\n c\n+d\n")
    'a\nB\nc\nd\n'

    Raises:
        ValueError: The lines around are not there, or are there twice.
    """
    for part in diff.split(f"{APART}\n"):
        lines = part.splitlines(keepends=True)
        old = "".join(_unmarked(line) for line in lines if line[0] in " -\n")
        new = "".join(_unmarked(line) for line in lines if line[0] in " +\n")
        if (f"\n{source}").count(f"\n{old}") != 1:
            raise ValueError(f"These lines stand there not once:\n{old}")
        source = (f"\n{source}").replace(f"\n{old}", f"\n{new}")[1:]
    return source


def _unmarked(line: str) -> str:
    """Return a line without its mark; an empty one has none."""
    return line if line == "\n" else line[1:]


def follow(steps: tuple[Step, ...], house: Path) -> None:
    """Do the steps of a recipe in a copy of the house."""
    for step in steps:
        path = house / step.file
        if step.is_new:
            assert not path.exists(), f"{step.file} is there already"
            path.write_text(step.text, "utf-8")
        else:
            path.write_text(changed(path.read_text("utf-8"), step.text), "utf-8")
