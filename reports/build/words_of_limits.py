"""Limits and markers in words.

Guarantees: a limit is told with its basis, its place and its source, and whether the value was
read there. Refuses: to say that anything complies.
"""

from ledger.domain.entries import Limit
from ledger.domain.entries.words import Bound, KnownBy, LimitBasis
from reports.build.parts import Parts, before
from reports.format import scaled

BOUNDS = {
    Bound.AT_MOST: "at most",
    Bound.LESS_THAN: "less than",
    Bound.FROM: "from",
    Bound.ABOVE: "above",
}
"""Which side of a limit is the matter, in words."""
BASES = {
    LimitBasis.PER_DAY: "a day",
    LimitBasis.IN_DRINK: "as served",
    LimitBasis.IN_PRODUCT: "as sold",
}
"""What a limit counts in, in words."""
KNOWN = {KnownBy.READ: "value read in it", KnownBy.RECALLED: "value from memory: look it up"}
"""How a value is known, in words."""


def amount_of(facts: Limit) -> str:
    """Return the value of a limit with its side and unit."""
    if facts.bound is Bound.AT_MOST and facts.value_micro == 0:
        return "none at all"
    return f"{BOUNDS[facts.bound]} {scaled(facts.value_micro, 1_000_000)} {facts.unit}"


def sentence_of(facts: Limit) -> str:
    """Return what a limit says, in one line without its place and source."""
    base = f"{facts.substance} {amount_of(facts)} {BASES[facts.basis]}"
    return f"{base}: {facts.says}" if facts.says else base


def source_of(facts: Limit) -> str:
    """Return where a limit is written and how its value is known."""
    return f"{facts.citation} ({KNOWN[facts.known_by]})"


def card(facts: Limit) -> list[str]:
    """Return a limit as lines for people."""
    days = (before("since", facts.since), before("until", facts.until))
    span = ", ".join(day for day in days if day)
    return [
        f"{facts.code}: {sentence_of(facts)}.",
        f"Place: {facts.place}{f', {span}' if span else ''}.",
        f"Source: {source_of(facts)}.",
        f"Next: pottle limits {facts.code} --value NUMBER --citation SOURCE says it anew.",
    ]


def limit(facts: Limit) -> Parts:
    """Return what is told of a limit as an entry."""
    return (
        f"{facts.code}: {facts.substance} {amount_of(facts)} {BASES[facts.basis]}",
        facts.place,
        facts.says,
        before("since", facts.since),
        before("until", facts.until),
        facts.citation,
        f"the value {facts.known_by}",
    )
