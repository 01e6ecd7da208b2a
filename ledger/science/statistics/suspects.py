"""What may be behind failed lots: the words of the comparison, as frozen data.

Guarantees: what always went together is one suspect; every count can be checked by hand.
"""

from collections.abc import Mapping
from enum import StrEnum
from fractions import Fraction

from msgspec import Struct, field

from ledger.science.statistics.association import Odds, Pooled
from ledger.science.statistics.exact import Table

LEVEL = Fraction(1, 20)
"""The usual level: how often at most something is named when nothing is a cause."""


class Sort(StrEnum):
    """What kind of thing a suspect is."""

    LOT = "lot"
    SETTING = "setting"


class Conclusion(StrEnum):
    """What the evidence comes to."""

    TOO_LITTLE = "too little evidence"
    NOTHING = "nothing stands out"
    NAMED = "named suspect"
    TOGETHER = "several not separable"


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


class Cause(Struct, frozen=True, order=True):
    """One thing that a lot may have had or not."""

    sort: Sort
    """A lot that went in, or a setting."""
    name: str
    """Code of the lot, or name of the setting."""
    level: str = ""
    """Level of the setting."""
    is_absent: bool = False
    """Whether it is its absence that is suspected."""


class SetApart(Struct, frozen=True):
    """What went with a suspect in every lot compared, but is less likely for other products."""

    cause: Cause
    """What it is."""
    clear_elsewhere: int
    """In how many lots of products that never failed it was too."""
    p: Fraction
    """Exact p that lots with it fail as often without the suspect as with it."""


class Suspect(Struct, frozen=True):
    """Something that some of the lots had and others had not, with the counts."""

    cause: Cause
    """What it is; the first of those that always went together."""
    not_separable_from: tuple[Cause, ...]
    """What always went with it in these lots."""
    table: Table
    """Failed and clear, with and without it, all strata together."""
    strata: tuple[tuple[str, Table], ...]
    """The same by product and maker, where both could have been otherwise."""
    odds: Odds
    """Conditional odds ratio within products, with its exact interval."""
    p: Fraction
    """Exact p within products, two-sided."""
    p_adjusted: Fraction | None
    """p allowing for all that were tested; None when it never could have stood out."""
    pooled: Pooled
    """Mantel-Haenszel over product and maker."""
    set_apart: tuple[SetApart, ...] = ()
    """What went with it here, but also into other products without harm."""
    by_batch: Table | None = None
    """The counts when lots of one batch count once; None where it differs within a batch."""
    is_explained: bool = False
    """Whether it only goes along with a stronger suspect."""

    @property
    def causes(self) -> tuple[Cause, ...]:
        """It and all that always went with it."""
        return (self.cause, *self.not_separable_from)


class Crossing(Struct, frozen=True):
    """The cheapest trial that would tell suspects apart."""

    arms: tuple[Cause, ...]
    """What is tried by itself, each in jars of its own."""
    has_control: bool
    """Whether jars without any of them stand beside."""
    jars_each: int
    """How many jars an arm takes."""
    p: Fraction
    """The exact p, adjusted, when one arm fails in every jar and no other jar does."""

    @property
    def jars(self) -> int:
        """How many jars it takes in all."""
        return self.jars_each * (len(self.arms) + self.has_control)


class Judgement(Struct, frozen=True):
    """What the comparison of failed and clear lots comes to."""

    conclusion: Conclusion
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
    """Those that stand out and are not explained by a stronger one."""
    tested: int
    """How many suspects were tested and allowed for."""
    in_all: tuple[Cause, ...]
    """What every lot compared had, failed or clear, so that nothing can be said of it."""
    level: Fraction
    """The level kept to."""
    crossing: Crossing | None = None
    """The trial to make next."""
    least_p: Fraction = field(default=Fraction(1))
    """The smallest p that any suspect among these lots could have come to."""
