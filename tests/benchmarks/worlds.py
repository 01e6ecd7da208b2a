"""Invented years of syrups, to see whether an innocent is ever named; it knows no judge.

A year has batches of essence, each of one oil, spirit and carbonate lot and of some settings, and
syrups made from them, each with sugar, bottles and a maker of its own. A syrup fails by the luck of
its batch or by its own, at a rate that may drift with time; one oil lot may be bad.
"""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from math import exp, log, sin, tau
from random import Random

BEGIN = datetime(2026, 1, 5, 9, tzinfo=UTC)
"""When a year begins."""
EVERY = timedelta(hours=30)
"""A syrup is made so often."""
BAD = "OIL-1"
"""The lot that is bad where one is."""
BAD_RATE = 0.9
"""How often a batch of it fails."""
CHOICES = {
    "contact time": ("under 24 h", "24 h or more"),
    "chill temperature": ("up to 4 °C", "above 4 °C"),
    "finest pore size": ("up to 11 µm", "above 11 µm"),
    "filter temperature": ("up to 8 °C", "above 8 °C"),
    "essence made by": ("NM", "TP"),
}
"""Settings of a batch."""


@dataclass(frozen=True, slots=True)
class World:
    """How a year comes about."""

    lots: int
    """How many syrups."""
    shared: float = 1.0
    """How often the luck of a syrup is that of its batch."""
    rate: float = 0.15
    """How often what is not bad fails, on the average."""
    drift: str = "none"
    """How the rate goes: none, up, step or turn."""
    dealt: str = "turn about"
    """How oil lots are used: turn about, one after the other, or overlapping."""
    oils: int = 4
    """How many oil lots; in long years as many more."""
    is_bad: bool = False
    """Whether one oil lot is bad."""
    rework: float = 0.0
    """How often some of the batch before goes into a batch."""


@dataclass(frozen=True, slots=True)
class Batch:
    """A batch of essence."""

    number: int
    made_of: frozenset[int]
    """Itself and the batches that went into it."""
    bought: frozenset[str]
    settings: dict[str, str]
    luck: float
    is_bad: bool


@dataclass(frozen=True, slots=True)
class Syrup:
    """A syrup, as it turned out."""

    number: int
    batch: Batch
    bought: frozenset[str]
    maker: str
    product: str
    at: datetime
    is_failed: bool


def play(world: World, seed: int) -> list[Syrup]:
    """Return the syrups of a year, by when they were made."""
    random = Random(seed)
    syrups: list[Syrup] = []
    before: Batch | None = None
    while len(syrups) < world.lots:
        batch = before = _batch(world, random, len(syrups), before)
        for _ in range(random.choice((1, 2, 3, 3, 4, 5))):
            if len(syrups) < world.lots:
                syrups.append(_syrup(world, random, len(syrups), batch))
    return syrups


def _batch(world: World, random: Random, made: int, before: Batch | None) -> Batch:
    is_reworked = before is not None and random.random() < world.rework
    oil = _oil(world, random, made)
    bought = {
        oil,
        f"SPIRIT-{made * 4 // world.lots}",
        f"CARBONATE-{random.randrange(2) + 2 * (made // 100)}",
    }
    return Batch(
        number=before.number + 1 if before else 0,
        made_of=frozenset({before.number + 1 if before else 0})
        | (before.made_of if before and is_reworked else frozenset()),
        bought=frozenset(bought) | (before.bought if before and is_reworked else frozenset()),
        settings={name: random.choice(levels) for name, levels in CHOICES.items()},
        luck=before.luck if before and is_reworked else random.random(),
        is_bad=world.is_bad and oil == BAD,
    )


def _oil(world: World, random: Random, made: int) -> str:
    oils = max(world.oils, world.lots // 15)
    place = made / world.lots * oils
    if world.dealt == "turn about" and oils == world.oils:
        return f"OIL-{random.randrange(oils)}"
    if world.dealt == "one after the other":
        return f"OIL-{int(place)}"
    # Two or three lots are open at a time; in a long year turn about means that too.
    return f"OIL-{min(oils - 1, max(0, int(place + random.uniform(-1, 1))))}"


def _syrup(world: World, random: Random, number: int, batch: Batch) -> Syrup:
    rate = BAD_RATE if batch.is_bad else _rate(world, number / world.lots)
    luck = batch.luck if random.random() < world.shared else random.random()
    return Syrup(
        number=number,
        batch=batch,
        bought=frozenset({f"SUGAR-{number // 9}", f"BOTTLES-{random.randrange(3) + number // 60}"}),
        maker=random.choice(("NM", "TP")),
        product="Orange syrup",
        at=BEGIN + number * EVERY,
        is_failed=luck < rate,
    )


def _rate(world: World, when: float) -> float:
    match world.drift:
        case "up":
            return 1 / (1 + exp(-log(world.rate / (1 - world.rate)) - 4 * (when - 0.5)))
        case "step":
            return world.rate * 0.4 if when < 0.6 else min(0.9, world.rate * 2.6)
        case "turn":
            return world.rate * (1 + 0.9 * sin(1.5 * tau * when))
        case _:
            return world.rate
