"""How large the house is and how it is built, in one row: ``python -m tests.house``.

Guarantees: the same measures for any tree of Python files, so that trees can be compared; what is
counted is said beside each measure. Refuses: to judge; `tests/test_house.py` does.
"""

import ast
import io
import sys
import tokenize
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from itertools import islice
from pathlib import Path
from statistics import median
from typing import NamedTuple

ROOT = Path(__file__).parents[1]
SOURCE = ("ledger", "reports", "cli")
"""The folders of the source, below the root."""


class Spread(NamedTuple):
    """Sizes in brief."""

    median: int
    """Half are no larger."""
    most: int
    """Nine of ten are no larger."""
    largest: int
    """The largest."""

    def __str__(self) -> str:
        return " / ".join(map(str, self))


def python_files(folders: Iterable[Path]) -> list[Path]:
    """Return the files of Python below some folders, those of every depth."""
    return sorted(path for folder in folders for path in folder.rglob("*.py"))


def spread(sizes: Sequence[int]) -> Spread:
    """Return the median of some sizes, what nine of ten do not pass, and the largest.

    >>> spread(range(1, 101))
    Spread(median=50, most=90, largest=100)
    """
    in_order = sorted(sizes)
    return Spread(int(median(in_order)), in_order[9 * (len(in_order) - 1) // 10], in_order[-1])


def lines_of(text: str) -> int:
    r"""Return how many lines a text has, blank ones too.

    >>> lines_of("a\n\nb\n"), lines_of("")
    (3, 0)
    """
    return len(text.splitlines())


def bodies_of(text: str) -> Iterator[int]:
    r"""Yield of each function how many lines its statements take, without its docstring.

    >>> list(bodies_of('def f():\n    "Say."\n    a = 1\n\n    return a\n'))
    [3]
    """
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            first = 1 if ast.get_docstring(node, clean=False) is not None else 0
            own = node.body[first:]
            yield (own[-1].end_lineno or 0) - own[0].lineno + 1 if own else 0


def comments_of(text: str) -> int:
    r"""Return how many comments a text has, those for a tool too.

    >>> comments_of("a = 1  # so\nb = '# not so'\n")
    1
    """
    told = tokenize.generate_tokens(io.StringIO(text).readline)
    return sum(token.type == tokenize.COMMENT for token in told)


def per_hundred(count: int, lines: int) -> str:
    """Return how many there are to a hundred lines, with one decimal.

    >>> per_hundred(3, 200)
    '1.5'
    """
    return f"{100 * count / lines:.1f}"


def thousands(lines: int) -> str:
    """Return a number of lines in thousands.

    >>> thousands(37_512)
    '37.5'
    """
    return f"{lines / 1000:.1f}"


def largest_folder(files: Iterable[Path]) -> tuple[int, Path]:
    """Return how many files stand side by side in the fullest folder, and which it is."""
    ((folder, count),) = Counter(path.parent for path in files).most_common(1)
    return count, folder


def with_their_module(commands: Iterable[str], folder: Path) -> int:
    """Return how many commands have a module of their own name; a keyword has a sign after it."""
    stems = {path.stem.rstrip("_") for path in folder.glob("*.py")}
    return sum(command in stems for command in commands)


def row(root: Path, commands: Sequence[str]) -> list[tuple[str, str]]:
    """Return each measure of a tree with its figure; an `__init__.py` is no file to look for."""
    source = python_files(root / name for name in SOURCE)
    texts = [path.read_text(encoding="utf-8") for path in source]
    tests = [path.read_text(encoding="utf-8") for path in python_files([root / "tests"])]
    modules = [path for path in source if path.name != "__init__.py"]
    sizes = [lines_of(path.read_text(encoding="utf-8")) for path in modules]
    lines = sum(map(lines_of, texts))
    bodies = [body for text in texts for body in bodies_of(text)]
    count, folder = largest_folder(modules)
    named = with_their_module(commands, root / "cli" / "commands")
    return [
        ("source / test lines, thousands", f"{thousands(lines)} / {_total(tests)}"),
        ("file lines, median / 90 % / longest", str(spread(sizes))),
        ("function bodies, median / 90 % / longest", str(spread(bodies))),
        ("largest flat folder, files", f"{count} ({folder.relative_to(root)})"),
        ("comments per 100 lines", per_hundred(sum(map(comments_of, texts)), lines)),
        ("commands with a module of their own name", f"{named} of {len(commands)}"),
    ]


def _total(texts: Iterable[str]) -> str:
    return thousands(sum(map(lines_of, texts)))


def main(root: Path = ROOT) -> None:
    """Print the row of a tree, its heads above it."""
    from cli.front import COMMANDS

    measures = row(root, list(COMMANDS))
    for cells in ([name for name, _ in measures], [figure for _, figure in measures]):
        print(f"| {' | '.join(cells)} |")


if __name__ == "__main__":
    main(*(Path(word) for word in islice(sys.argv, 1, 2)))
