"""Limits and markers in words.

Guarantees: a limit is told with its basis, its place and its source, and whether the value was
read there. Refuses: to say that anything complies.
"""

from ledger.domain.entries import Limit
from ledger.domain.entries.choices import Bound, KnownBy, LimitBasis
from ledger.domain.masters.limits import Holds, ListedLimit
from reports.kit.format import scaled
from reports.words.entries.parts import Parts, before

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


def listed_words(listed: ListedLimit) -> list[tuple[Limit, str]]:
    """Return a limit and what is to come in its place, each with its line in a list."""
    told = [(listed.limit, f"{sentence_of(listed.limit)}{_standing(listed)}")]
    if listed.to_come:
        since = listed.to_come.since
        told.append((listed.to_come, f"{sentence_of(listed.to_come)} (to come, from {since})"))
    return told


def _standing(listed: ListedLimit) -> str:
    match listed.holds:
        case Holds.PAST:
            return f" (past, held until {listed.limit.until}: not compared)"
        case Holds.TO_COME:
            return f" (to come, from {listed.limit.since}: not compared yet)"
        case _:
            return ""


def card(listed: ListedLimit) -> list[str]:
    """Return a limit as lines for people, with what is to come in its place."""
    facts = listed.limit
    lines = []
    for item, words in listed_words(listed):
        days = (before("since", item.since), before("until", item.until))
        span = ", ".join(day for day in days if day)
        lines += [
            f"{item.code}: {words}.",
            f"Place: {item.place}{f', {span}' if span else ''}.",
            f"Source: {source_of(item)}.",
        ]
    return [
        *lines,
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
