"""What the book refuses, asks a reason for, or remarks on; one family of rules a file.

Guarantees: `findings` runs every rule on a draft and returns all they find, in a fixed order.
Refuses: side effects; a rule sees a draft and its scene and nothing else.
"""

from ledger.domain.entries import Draft
from ledger.domain.lots.scene import Scene
from ledger.domain.rules.always import batch as making
from ledger.domain.rules.always import corrections as keeping
from ledger.domain.rules.always import genealogy, names, status, times
from ledger.domain.rules.always import on_hand as amounts
from ledger.domain.rules.finding import Finding, Severity
from ledger.domain.rules.formula import acts as following_steps
from ledger.domain.rules.formula import lines as following_amounts
from ledger.domain.rules.formula import version as following
from ledger.domain.rules.release import barriers as release
from ledger.domain.rules.release import clarity as gate
from ledger.domain.rules.release import clearance, done
from ledger.domain.rules.usual import handling as usual_handling
from ledger.domain.rules.usual import measures as usual_measures
from ledger.domain.rules.usual import readings as usual_readings
from ledger.domain.rules.usual import substances as usual_substances

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
    usual_substances,
    usual_readings,
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
