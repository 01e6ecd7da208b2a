"""What is decided before a trial is made: which suspects, how many jars, by what it is judged.

Guarantees: with the root of the book before it, from which everything else is drawn; so order and
blind codes of the jars follow from the entry alone and are stored nowhere.
"""

from enum import StrEnum
from typing import ClassVar

from msgspec import Struct

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries.choices import Grade, ProductKind
from ledger.domain.entries.spine import Facts


class Decides(StrEnum):
    """What a trial is judged by."""

    LOOK = "look"
    NTU = "ntu"


class TrialAge(StrEnum):
    """Ages at which the jars of a trial are looked at."""

    DAY = "1 d"
    WEEK = "7 d"


class TwoLevels(Struct, frozen=True):
    """A suspect that a trial tries, with the level that is suspected and the usual one."""

    name: str
    """What is varied: oil, chill, carbonate."""
    usual: str
    """The level that is taken for harmless: a lot, or a setting in words."""
    suspected: str
    """The level that may be the cause."""


class Evening(Struct, frozen=True):
    """The jars that are made together."""

    jars: int
    """How many."""


class Plan(Facts, frozen=True):
    """A trial is planned."""

    KIND: ClassVar[str] = "trial"

    name: str
    """Name of the trial; its batches carry it."""
    number: int
    """1 for the book's first plan; the codes of its jars begin with it."""
    product: str
    """Name of what is made in the jars."""
    product_kind: ProductKind
    """What kind of thing it is."""
    jar: Quantity
    """The volume of each jar."""
    decides: Decides
    """What the trial is judged by."""
    worst: Grade
    """The worst grade that counts as clear."""
    age: TrialAge
    """The age of the look that decides."""
    level_mpct: int
    """How often at most an innocent is named, in thousandths of a per cent."""
    fails_mpct: int
    """Share of jars that are taken to fail where the cause is, in thousandths of a per cent."""
    else_mpct: int
    """Share of the others that are taken to fail."""
    chance_mpct: int
    """Chance to name the cause, as the size of the trial promises it."""
    entries: int
    """How many entries the book had before."""
    root: str
    """The root of the book before, 64 hexadecimal digits, from which order and codes are drawn."""
    formula: str | None = None
    """Code of the formula that the jars follow."""
    formula_version: int | None = None
    """Version of that formula."""
    factors: tuple[TwoLevels, ...] = ()
    """What is varied."""
    evenings: tuple[Evening, ...] = ()
    """The evenings in their order."""
    draw: int | None = None
    """Rule by which the marks are drawn (`ledger.domain.evidence.draws`); None: the first."""
