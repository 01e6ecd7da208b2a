"""What may be behind failed lots: the words of the comparison, as frozen data.

Guarantees: what cannot be told apart is one suspect; every count can be checked by hand; a suspect
is named only where the evidence at its own level shows it to be the cause.
"""

from collections.abc import Mapping
from enum import StrEnum
from fractions import Fraction

from msgspec import Struct, field

from ledger.science.statistics.association import Odds, Pooled, exact_odds, mantel_haenszel
from ledger.science.statistics.exact import Table

LEVEL = Fraction(1, 20)
"""The usual level: in how many books at most an innocent is ever named."""


class Sort(StrEnum):
    """What kind of thing a suspect is."""

    LOT = "lot"
    SETTING = "setting"
    TIME = "time"


class Level(StrEnum):
    """Where a thing was dealt out, and so what is counted once."""

    BATCH = "batch"
    """The same in all lots of a batch of essence: batches are counted."""
    BASE = "base"
    """The same in all lots of another batch made here, such as base syrup: these are counted."""
    RUN = "run"
    """It differs among lots of one batch: they are compared with each other."""


class Conclusion(StrEnum):
    """What the evidence comes to."""

    CAUSE = "cause"
    """Cause shown."""
    LEAD = "lead"
    """Worth a trial, not yet evidence."""
    INSEPARABLE = "inseparable"
    """Something stands out, but not one thing alone."""
    TOO_FEW = "too few"
    """Nothing could have stood out."""
    NONE = "none"
    """Nothing stands out."""


class Observed(Struct, frozen=True):
    """One making run, as it turned out."""

    lot: str
    """Code of the lot."""
    is_failed: bool
    """Whether it failed."""
    inputs: frozenset[str]
    """Codes of all lots it is made of, at any depth."""
    settings: Mapping[str, str]
    """How it was made: each setting with its level, in words."""
    product: str
    """What is compared with like: lots of one product."""
    maker: str
    """Who made it."""
    batch: str = ""
    """The batches of essence it is made of: lots of one batch share its luck. Empty: its own."""
    bases: str = ""
    """Other batches made here that it is made of, such as base syrup."""
    begun: str = ""
    """When it was begun, UTC instant text; empty where it is not known."""


class Cause(Struct, frozen=True, order=True):
    """One thing that a lot may have had or not."""

    sort: Sort
    """A lot that went in, a setting, or the time of making."""
    name: str
    """Code of the lot, or name of the setting."""
    level: str = ""
    """Level of the setting."""


class SetApart(Struct, frozen=True):
    """What went with a suspect in every lot compared, but is less likely for other products."""

    cause: Cause
    """What it is."""
    clear_elsewhere: int
    """In how many batches of products that never failed it was too."""
    p: Fraction
    """Exact p that batches with it fail as often without the suspect as with it."""


class Suspect(Struct, frozen=True):
    """Something that some of the lots had and others had not, with the counts."""

    cause: Cause
    """What it is; the first of those that cannot be told apart."""
    not_separable_from: tuple[Cause, ...]
    """What these lots cannot tell it from."""
    level: Level
    """Where it was dealt out."""
    table: Table
    """Failed and clear lots, with and without it, all strata together."""
    units: Table
    """The same counted at its level, where both could have been otherwise."""
    strata: tuple[tuple[str, Table], ...]
    """The counts at its level, stratum by stratum."""
    p: Fraction
    """Exact p at its level within strata that failing goes with it so much, one-sided."""
    p_adjusted: Fraction | None
    """p allowing for all that were tested, for drift and for being asked again; None: untested."""
    set_apart: tuple[SetApart, ...] = ()
    """What went with it here, but also into other products without harm."""

    @property
    def causes(self) -> tuple[Cause, ...]:
        """It and all that it cannot be told from."""
        return (self.cause, *self.not_separable_from)

    def odds(self, level: Fraction) -> Odds:
        """Return the conditional odds ratio at its level within strata, with its exact interval."""
        return exact_odds([table for _, table in self.strata], float(level))

    def pooled(self, level: Fraction) -> Pooled:
        """Return what the Mantel-Haenszel method makes of its strata."""
        return mantel_haenszel([table for _, table in self.strata], float(level))


class Counted(Struct, frozen=True):
    """How many units of a level there are."""

    level: Level
    """Which level."""
    units: int
    """How many."""
    failed: int
    """Of how many of them a lot failed."""


class Judgement(Struct, frozen=True):
    """What the comparison of failed and clear lots comes to."""

    verdict: Conclusion
    """In a word."""
    failed: tuple[str, ...]
    """Codes of the failed lots."""
    clear: tuple[str, ...]
    """Codes of the clear lots of the same products."""
    elsewhere: tuple[str, ...]
    """Codes of clear lots of products that never failed."""
    suspects: tuple[Suspect, ...]
    """All suspects, the strongest first."""
    named: tuple[Suspect, ...]
    """Those that the evidence shows to be a cause."""
    lead: Suspect | None
    """Where nothing is named, what a trial should try next."""
    tested: int
    """How many suspects were tested and allowed for."""
    in_all: tuple[Cause, ...]
    """What every lot compared had, failed or clear, so that nothing can be said of it."""
    untested: tuple[Cause, ...]
    """What could not have stood out with these counts, and was not tested."""
    level: Fraction
    """The level kept to over all times of asking."""
    top: Counted
    """How many units of the highest level there are, and how many failed."""
    least_p: Fraction = field(default=Fraction(1))
    """The smallest p that any suspect among these lots could have come to."""
