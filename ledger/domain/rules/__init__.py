"""What the book refuses, asks a reason for, or remarks on; one family of rules a file.

Guarantees: `findings` runs every rule on a draft and returns all they find, in a fixed order.
Refuses: side effects; a rule sees a draft and its scene and nothing else.
"""

from ledger.domain.entries import Draft
from ledger.domain.rules import (
    amounts,
    clearance,
    done,
    following,
    following_amounts,
    following_steps,
    gate,
    genealogy,
    keeping,
    making,
    names,
    release,
    status,
    times,
    usual_handling,
    usual_measures,
)
from ledger.domain.rules.finding import Finding, Severity
from ledger.domain.scene import Scene

FAMILIES = (
    names,
    times,
    genealogy,
    amounts,
    making,
    status,
    following,
    following_amounts,
    following_steps,
    usual_measures,
    usual_handling,
    release,
    done,
    gate,
    clearance,
    keeping,
)
"""The families, in the order in which their findings are told."""


def findings(draft: Draft, scene: Scene) -> tuple[Finding, ...]:
    """Return all that the rules find about a draft."""
    return tuple(
        finding for family in FAMILIES for rule in family.RULES for finding in rule(draft, scene)
    )


__all__ = ["FAMILIES", "Finding", "Severity", "findings"]
