"""What a rule says.

Guarantees: a finding is a whole sentence and a next step. Refuses: findings without a severity.
"""

import re
from collections.abc import Callable, Iterable
from enum import StrEnum

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Draft
from ledger.domain.lots.scene import Scene

WORDS = {Measure.UL: "by volume", Measure.MG: "by weight", Measure.UEACH: "by number"}
"""How a measure is said."""
SAY_WHY = "Check what was written; if it is so, say why with --because."
"""What to do about what is outside a formula's limits."""


class Severity(StrEnum):
    """What a finding does to the entry."""

    IMPOSSIBLE = "impossible"
    """It cannot be true: nothing is recorded."""
    REASON = "reason"
    """It should not have happened: recorded with a reason, as a deviation."""
    ASK = "ask"
    """It may be a slip: recorded once it is said that it is none, and no deviation."""
    WHY = "why"
    """It is a decision that says why: recorded with its reason, and no deviation."""
    GATE = "gate"
    """It stands in the way of a release: released only as an override with a reason."""
    REMARK = "remark"
    """It is merely unusual: recorded and said."""


THIS_ENTRY = "ENTRY"
"""Stands in what a rule proposes for the number of the entry judged, which has none yet."""
_PROPOSED = re.compile(rf"(\bpottle (?:correct|strike) ){THIS_ENTRY}\b")


class Finding(Struct, frozen=True):
    """One thing a rule found."""

    severity: Severity
    """What it does to the entry."""
    rule: str
    """The rule's name, kept with a deviation."""
    what: str
    """What, with what was expected and what was got."""
    todo: str
    """What to do next."""
    command: str | None = None
    """What to type for it, where one command as it stands does it; the sentence ends with it."""

    def told_of(self, seq: int) -> tuple[str, str]:
        """Return what and what to do, once the entry that was judged has its number."""
        # Only where it stands in a command of ours: somebody's jar may have that name too.
        return self.what, _PROPOSED.sub(rf"\g<1>{seq}", self.todo)


Rule = Callable[[Draft, Scene], Iterable[Finding]]
"""A rule: pure, and silent when there is nothing to say."""


def impossible(rule: str, what: str, todo: str) -> Finding:
    """Return a finding that refuses the entry."""
    return Finding(Severity.IMPOSSIBLE, rule, what, todo)


def needs_reason(rule: str, what: str, todo: str) -> Finding:
    """Return a finding that asks for a reason."""
    return Finding(Severity.REASON, rule, what, todo)


def asks(rule: str, what: str, todo: str) -> Finding:
    """Return a finding that asks whether it is so."""
    return Finding(Severity.ASK, rule, what, todo)


def says_why(rule: str, what: str, todo: str) -> Finding:
    """Return a finding that asks why something was decided."""
    return Finding(Severity.WHY, rule, what, todo)


def remark(rule: str, what: str, todo: str = "") -> Finding:
    """Return a finding that is only said."""
    return Finding(Severity.REMARK, rule, what, todo)
