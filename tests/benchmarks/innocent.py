"""How often an innocent is ever named, and how often a bad oil lot is found.

Run it as ``python -m tests.benchmarks.innocent --books 2000 --lots 18 30``; the figures stand in
`tests/benchmarks/RESULTS.md`. A book is asked after each failure, as people ask. With ``--kept``
each cell is added to a file when it is done, and what stands there is not played again.
"""

import argparse
import time
from collections.abc import Iterator, Sequence
from contextlib import ExitStack
from fractions import Fraction
from math import sqrt
from pathlib import Path
from unittest.mock import patch

from ledger.science.statistics import chance
from ledger.science.statistics import judge as judging
from ledger.science.statistics.judge import judge
from ledger.science.statistics.suspects import Observed
from tests.benchmarks.curtailed import curtailed
from tests.benchmarks.worlds import BAD, Syrup, World, play

LEAST_BATCHES = 3
"""A bad oil lot must have gone into so many batches to be found at all."""
SPENT_IN = (judging, chance)
"""The modules that ask how much of the level is left."""
SHARES = (0.0, 0.5, 0.8, 1.0)
"""How much of its luck a syrup shares with its batch."""
NULLS = (
    {"rate": 0.15},
    {"rate": 0.3},
    {"rate": 0.2, "drift": "up", "dealt": "overlapping"},
    {"rate": 0.2, "drift": "step", "dealt": "one after the other"},
    {"rate": 0.2, "drift": "turn", "dealt": "overlapping"},
    {"rate": 0.2, "rework": 0.2},
)
"""Years in which nothing but luck and drift decides."""


def observed(syrups: Sequence[Syrup]) -> list[Observed]:
    """Return what the book would tell of some syrups."""
    return [
        Observed(
            lot=f"S-{one.number}",
            is_failed=one.is_failed,
            inputs=one.bought | one.batch.bought | {f"E-{n}" for n in one.batch.made_of},
            settings=one.batch.settings | {"made by": one.maker},
            product=one.product,
            maker=one.maker,
            batch=" ".join(f"E-{n}" for n in sorted(one.batch.made_of)),
            begun=one.at.isoformat(),
        )
        for one in syrups
    ]


def named(runs: Sequence[Observed]) -> list[str]:
    """Return what is named when the book is asked once."""
    return [cause.name for suspect in judge(runs).named for cause in suspect.causes]


def quickly_named(runs: Sequence[Observed]) -> list[str]:
    """Return the same: most books name nothing, which is soon seen."""
    with curtailed():
        is_any = bool(named(runs))
    return named(runs) if is_any else []


def ever_named(syrups: Sequence[Syrup]) -> set[str]:
    """Return all that is ever named when the book is asked after each failure."""
    runs = observed(syrups)
    asked = [place for place, run in enumerate(runs, 1) if run.is_failed]
    return {name for place in asked for name in quickly_named(runs[:place])}


def worlds(lots: int) -> Iterator[World]:
    """Return the years in which everything is innocent."""
    for shared in SHARES:
        for null in NULLS:
            yield World(lots, shared=shared, **null)


def accused(world: World, books: int) -> int:
    """Return in how many books an innocent is ever named."""
    return sum(
        bool(ever_named(play(world, seed)) - ({BAD} if world.is_bad else set()))
        for seed in range(books)
    )


def named_at_the_whole_level(runs: Sequence[Observed]) -> list[str]:
    """Return what would be named if nobody ever asked twice."""
    with ExitStack() as stack:
        for module in SPENT_IN:
            stack.enter_context(patch.object(module, "share_left", lambda _failures: Fraction(1)))
        return named(runs)


def found(world: World, books: int) -> tuple[int, int, int, int]:
    """Return how often a bad oil lot is named, and in how many books.

    Asked once at the whole level, asked once at the level left, and ever at the level left.
    """
    whole = once = ever = counted = 0
    for seed in range(books):
        syrups = play(world, 10**6 + seed)
        if len({one.batch.number for one in syrups if one.batch.is_bad}) >= LEAST_BATCHES:
            counted += 1
            whole += named_at_the_whole_level(observed(syrups)) == [BAD]
            once += named(observed(syrups)) == [BAD]
            ever += BAD in ever_named(syrups)
    return whole, once, ever, counted


def _told(count: int, books: int) -> str:
    share = count / books
    return f"{100 * share:.1f} ± {100 * sqrt(share * (1 - share) / books):.1f} %"


def main() -> None:
    """Print a row a cell."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--books", type=int, default=2000)
    parser.add_argument("--lots", type=int, nargs="+", default=[18, 30, 60])
    parser.add_argument("--power", action="store_true")
    parser.add_argument("--kept", type=Path)
    asked = parser.parse_args()
    kept = asked.kept.read_text() if asked.kept and asked.kept.exists() else ""
    for lots in asked.lots:
        for world in _powers(lots) if asked.power else worlds(lots):
            if f"{world}: " in kept:
                continue
            begun = time.perf_counter()
            if asked.power:
                *times, counted = found(world, asked.books)
                whole, once, ever = (_told(count, counted) for count in times)
                told = f"whole level {whole}, once {once}, ever {ever} of {counted}"
            else:
                told = f"{_told(accused(world, asked.books), asked.books)} of {asked.books}"
            _tell(f"{world}: {told} ({time.perf_counter() - begun:.0f} s)", asked.kept)


def _tell(row: str, kept: Path | None) -> None:
    print(row, flush=True)
    if kept:
        with kept.open("a") as file:
            file.write(f"{row}\n")


def _powers(lots: int) -> Iterator[World]:
    for rate in (0.05, 0.1, 0.15, 0.2):
        for oils in (3, 4, 5):
            yield World(lots, rate=rate, oils=oils, is_bad=True)


if __name__ == "__main__":
    main()
