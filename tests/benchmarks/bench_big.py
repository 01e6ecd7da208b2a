"""What a command takes in a big book, against what it takes in a small one.

``python -m tests.benchmarks.bench_big [SMALL BIG] [--in FOLDER] [--of-one-lot]``, by default a
thousand and a hundred thousand lots; books are made where missing and copied, since commands write.
Each command is a process of its own, of which the processor time counts, so that a loaded machine
does not change the ratio. The lots asked for are the same in both books, and what they are made of
as well. What lists the whole book is told without a goal, and left out with ``--of-one-lot``.
"""

import argparse
import os
import resource
import shlex
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Mapping, Sequence
from pathlib import Path

from tests.benchmarks.books import book_of
from tests.benchmarks.ratios import line

SIZES = (1_000, 100_000)
TIMES = 3
"""How often each is run; the least time counts."""
OF_ONE_LOT = (
    'start --product "Orange essence" --kind essence --target 500mL --because bench',
    "add OE-001-5 SOO-001-3 5mL --because bench",
    "look OE-001-5 clear --of neat --because bench",
    "lot OE-001-5",
    "trace BOS-001-S",
    "trace OE-001-5 --forward",
    "serving OS-002-M",
    "cost BOS-001-S",
    "recall OE-001-5 --drill",
    "label BOS-001-S --out label.pdf --force --because bench",
    "record OE-001-5 --out record.pdf --force",
    "journal",
)
OF_THE_BOOK = ("suspects BOS-001-S", "due", "stock")


def seconds(words: Sequence[str], folder: Path, where: Path) -> float:
    """Return the least processor time of a command, in seconds; which must succeed."""
    named: Mapping[str, str] = {"POTTLE_LEDGER": str(where), "POTTLE_BY": "AB"}
    environment = {**os.environ, **named, "PYTHONPATH": str(Path.cwd())}
    taken = []
    for _ in range(TIMES):
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        done = subprocess.run(
            [sys.executable, "-m", "cli.program", *words],
            cwd=folder,
            env=environment,
            capture_output=True,
            text=True,
            check=False,
        )
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        if done.returncode:
            raise RuntimeError(f"{words}: {done.stderr or done.stdout}")
        taken.append(after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime)
    return min(taken)


def copied(folder: Path, kept: Path, lots: int) -> Path:
    """Return a copy of a book of so many lots, which is made where it is missing."""
    source = kept / f"{lots}.db"
    if not source.exists():
        book_of(lots, str(source)).close()
    return Path(shutil.copyfile(source, folder / f"copy-{lots}.db"))


def measure(folder: Path, small: Path, big: Path, commands: Sequence[str]) -> None:
    """Print a ratio for each command."""
    for words in commands:
        few, many = (seconds(shlex.split(words), folder, book) for book in (small, big))
        goal = "at most 1.5" if words in OF_ONE_LOT else "(lists the whole book)"
        line(f"{words} ({few:.2f} s)", many / few, goal)


def main() -> None:
    """Measure books of two sizes."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("lots", nargs="*", type=int, default=SIZES)
    parser.add_argument("--in", dest="folder", type=Path)
    parser.add_argument("--of-one-lot", action="store_true")
    told = parser.parse_args()
    with tempfile.TemporaryDirectory() as passing:
        folder = Path(passing)
        kept = told.folder or folder
        small, big = (copied(folder, kept, lots) for lots in told.lots)
        of_the_book = () if told.of_one_lot else OF_THE_BOOK
        measure(folder, small, big, (*OF_ONE_LOT, *of_the_book))


if __name__ == "__main__":
    main()
