"""How often a planned trial names the true cause, and how often an innocent.

Run it as ``python -m tests.benchmarks.planned_trials``; the shares stand in DEVELOPERS.md. Jars
are made here by rules of their own: which suspect is the cause, how often jars fail with it and
without, how one evening's luck differs from another's. The plan and the judge know none of it.
"""

from collections.abc import Sequence
from fractions import Fraction
from random import Random
from typing import NamedTuple

from ledger.science.statistics.designs import Row, design
from ledger.science.statistics.power import Rates, size_for
from ledger.science.statistics.randomisation import Shown, TriedJar, tried
from ledger.science.statistics.suspects import LEVEL

TRIALS = 2000
"""How many trials a full run makes of each kind."""
MOST = 8
"""Most jars an evening."""


class World(NamedTuple):
    """How jars really come about."""

    factors: int
    """How many suspects are tried."""
    has_cause: bool
    """Whether one of them is the cause."""
    without: float
    """The share of jars that fail for no reason."""
    by_ntu: bool
    """Whether a meter decides."""
    luck: float
    """How far an evening's luck moves all its jars, in widths of the jars' own."""


class Share(NamedTuple):
    """What came of many trials."""

    jars: int
    """Jars of each."""
    named: float
    """The share that named the true cause."""
    innocent: float
    """The share that named something else."""


def share(world: World, trials: int) -> Share:
    """Plan and make many trials of one kind."""
    rates = Rates(0.9, world.without)
    size = size_for(world.factors, rates, LEVEL, 0.9, MOST, by_ntu=world.by_ntu)
    if size is None:
        raise ValueError("No trial is large enough.")
    named = innocent = 0
    for seed in range(trials):
        random = Random(seed)
        cause = random.randrange(world.factors) if world.has_cause else None
        jars = _jars(world, size.evenings, cause, random)
        shown = {
            place
            for place, item in enumerate(tried(jars, world.factors, LEVEL))
            if item.shown is Shown.CAUSE
        }
        named += cause in shown
        innocent += bool(shown - {cause})
    return Share(size.jars, named / trials, innocent / trials)


def _jars(
    world: World, evenings: Sequence[int], cause: int | None, random: Random
) -> list[TriedJar]:
    rows = list(design(world.factors, sum(evenings)))[: sum(evenings)]
    made: list[TriedJar] = []
    for evening, size in enumerate(evenings):
        ours, rows = rows[:size], rows[size:]
        random.shuffle(ours)
        luck = random.gauss(0, world.luck)
        made += [TriedJar(evening, row, _score(world, row, cause, luck, random)) for row in ours]
    return made


def _score(world: World, row: Row, cause: int | None, luck: float, random: Random) -> Fraction:
    """Return haze as it comes about: a cause moves it so that nine jars in ten pass the limit."""
    clear_to, cloudy_to = _tail(world.without), _tail(0.1)
    haze = random.gauss(0, 1) + luck
    if cause is not None and row[cause]:
        haze += clear_to + cloudy_to
    return Fraction(haze) if world.by_ntu else Fraction(int(haze > clear_to))


def _tail(share: float) -> float:
    """Return where a share of a normal distribution is above, by halving."""
    from math import erfc, sqrt

    low, high = -8.0, 8.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if erfc(middle / sqrt(2)) / 2 > share else (low, middle)
    return low


def main() -> None:
    """Print the shares for one to four suspects, by looks and by a meter."""
    for factors in (1, 2, 3, 4):
        for by_ntu in (False, True):
            for luck in (0.0, 0.5):
                world = World(factors, True, 0.05, by_ntu, luck)
                with_cause = share(world, TRIALS)
                innocent = share(world._replace(has_cause=False), TRIALS).innocent
                print(
                    f"{factors} tried, {'NTU' if by_ntu else 'looks'}, luck of evenings {luck:g}: "
                    f"{with_cause.jars} jars, cause named in {100 * with_cause.named:.1f} %, "
                    f"another beside it in {100 * with_cause.innocent:.1f} %, "
                    f"any where none is one in {100 * innocent:.1f} % of {TRIALS} trials"
                )


if __name__ == "__main__":
    main()
