"""What the book refuses, asks a reason for, or remarks on; one family of rules a file.

Guarantees: `findings` runs every rule on a draft and returns all they find, in a fixed order.
Refuses: side effects; a rule sees a draft and its scene and nothing else.
"""

from ledger.domain.entries import Draft
from ledger.domain.lots.scene import Scene
from ledger.domain.rules.always import (
    batch,
    cases,
    clocks,
    corrections,
    genealogy,
    gs1_numbers,
    labels,
    names,
    on_hand,
    parties,
    status,
    times,
    verdicts,
)
from ledger.domain.rules.finding import Finding, Severity
from ledger.domain.rules.formula import acts, lines, version
from ledger.domain.rules.release import barriers, clarity, clearance, declared, done, given
from ledger.domain.rules.usual import handling, harm, measures, readings, substances

FAMILIES = (
    names,
    parties,
    clocks,
    times,
    genealogy,
    on_hand,
    labels,
    cases,
    gs1_numbers,
    batch,
    status,
    verdicts,
    version,
    lines,
    acts,
    measures,
    handling,
    substances,
    harm,
    readings,
    barriers,
    done,
    given,
    clarity,
    clearance,
    declared,
    corrections,
)
"""The families, in the order in which their findings are told."""


def findings(draft: Draft, scene: Scene) -> tuple[Finding, ...]:
    """Return all that the rules find about a draft."""
    return tuple(
        finding for family in FAMILIES for rule in family.RULES for finding in rule(draft, scene)
    )


__all__ = ["FAMILIES", "Finding", "Severity", "findings"]
