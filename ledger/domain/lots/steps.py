"""The steps of a lot as sums need them: what went in, came out, was measured, was done.

Guarantees: amounts are whole numbers of the smallest unit of the lot they count.
"""

from enum import Enum, auto

from msgspec import Struct


class Act(Enum):
    """What one step does to a lot."""

    INTO = auto()
    """Something of another lot goes in."""
    OUT = auto()
    """Something is taken out, whoever gets it."""
    LEVEL = auto()
    """What is there is measured."""
    WORK = auto()
    """Work is done on it."""
    SPENT = auto()
    """Something of another lot is spent on it and nothing of that stays, as a rinse to waste."""


class Step(Struct, frozen=True):
    """One step of a lot, in the order in which they happened."""

    act: Act
    """What it does."""
    amount: int
    """What it adds, takes or measures in the lot's measure; minutes of work."""
    source: str | None = None
    """The lot it came from, for what goes in or is spent."""
    taken: int = 0
    """What left that lot, in that lot's measure."""
    draw: int = 0
    """Which of the steps of `source` the draw is, by its index there; not used for a bought lot."""
    entry: int = 0
    """Number of the entry that says so."""
    kind: str = ""
    """Kind of that entry."""
    at: str = ""
    """When it happened, UTC instant text."""
    clock: str = ""
    """When it happened on the clock it was written by, as text without an offset."""
    outside: str = ""
    """Where it came from or went to, when that was no lot."""
    stands_for: int = 0
    """Number of the first entry of its chain of corrections."""


class Bought(Struct, frozen=True):
    """A received lot with what was paid for it."""

    amount: int
    """How much came, in its smallest unit."""
    cost_minor: int | None
    """What it cost in the smallest coin it is counted with, duty included; None: not known."""
    duty_minor: int = 0
    """How much of that is spirit duty."""
    digits: int | None = None
    """Digits after the point that both are counted with; None: two, hundredths."""
