"""What stands in the way of an entry, as the error that is raised for it.

Guarantees: all that stands in the way is told at once. Refuses: to ask for a reason where none
would help.
"""

from collections.abc import Sequence

from ledger.domain.rules import Finding, Severity
from ledger.errors import FindingError, LedgerError, ReasonNeededError, RefusedError

ASKING = frozenset({Severity.REASON, Severity.ASK})
"""Findings that an entry is recorded in spite of, once something is said of them."""


def departs(finding: Finding) -> bool:
    """Return whether a deviation is recorded with an entry of which this was found."""
    return finding.severity in (Severity.REASON, Severity.GATE)


def stop(all_findings: Sequence[Finding], reason: str | None, *, insists: bool) -> None:
    """Raise what stands in the way of an entry, if anything does.

    Args:
        all_findings: What the rules found.
        reason: The reason that is given.
        insists: Whether it is recorded whatever is in its way, as `Desk.record` says.

    Raises:
        RefusedError: It cannot be true.
        ReasonNeededError: It should not have happened, or says why, and no reason is given.
        FindingError: A release has something in its way and no reason for it is given.
    """
    stops = _of(all_findings, Severity.IMPOSSIBLE)
    whys = _of(all_findings, Severity.WHY)
    asks = _of(all_findings, *ASKING)
    gates = _of(all_findings, Severity.GATE)
    unanswered = [] if reason else [*whys, *asks]
    error: type[LedgerError] | None = None
    # A reason cannot make true what is impossible, so it is not asked for then.
    if stops:
        error = RefusedError
    # Why a hold ends is no reason for what else is in the way: one reason answers one thing.
    elif gates and (not reason or (whys and not insists)):
        error = FindingError
    elif unanswered:
        error = ReasonNeededError
    if error:
        told = (*stops, *gates, *unanswered)
        raise error.of([(finding.what, finding.todo) for finding in told])


def _of(all_findings: Sequence[Finding], *severities: Severity) -> list[Finding]:
    return [finding for finding in all_findings if finding.severity in severities]
