"""What is judged: verdicts on lots, second checks, and deviations.

Guarantees: these move nothing; a verdict changes where its lot stands.
"""

from typing import ClassVar

from ledger.domain.entries.choices import SeqRef, Verdict
from ledger.domain.entries.spine import Facts


class Judge(Facts, frozen=True):
    """A decision about a lot."""

    KIND: ClassVar[str] = "judge"

    verdict: Verdict
    """What was decided."""


class Check(Facts, frozen=True):
    """A second person has checked an entry or a lot."""

    KIND: ClassVar[str] = "check"

    about: SeqRef | None = None
    """Number of the entry checked; None: the lot as a whole."""
    words: str | None = None
    """What was checked."""


class Deviation(Facts, frozen=True):
    """Something that should not have happened, recorded with its reason."""

    KIND: ClassVar[str] = "deviation"

    rule: str
    """Name of the rule it departs from."""
    text: str
    """What was found, as a whole sentence."""
    about: SeqRef | None = None
    """Number of the entry it belongs to."""
