"""Verdicts and checks: a decision says why, and a second look is somebody else's.

Guarantees: a hold, its end, a rejection and the withdrawal of a formula are recorded with their
reason; a check by who did the work is kept, and said to be none by a second person. Refuses: a
check of what counts no longer.
"""

from collections.abc import Iterator

from ledger.domain.entries import Check, Draft, Judge, Withdrawal
from ledger.domain.entries.choices import Verdict
from ledger.domain.lots.lot import Status
from ledger.domain.lots.makers import makers_of
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import LotState, status
from ledger.domain.masters.formulas import version_of
from ledger.domain.rules.finding import Finding, Rule, impossible, remark, says_why

ASKS_WHY = {
    Verdict.HOLD: ("be put on hold", "a customer found a ring"),
    Verdict.REJECT: ("be rejected", "smells of solvent"),
    Verdict.REWORK: ("be sent to rework", "hazy after the second pass"),
    Verdict.RECALL: ("be recalled", "two customers found it cloudy"),
}
"""Verdicts that say why: what the lot is to do, and a reason as an example."""


def decisions_say_why(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A verdict against a lot, the end of a hold and a withdrawal have a reason."""
    facts = draft.facts
    if draft.corrects is not None:
        return
    if isinstance(facts, Withdrawal):
        yield says_why(
            "withdrawal",
            f"{version_of(facts)} cannot be withdrawn without a reason.",
            'Say why: --because "the yield was never reached"',
        )
    if not isinstance(facts, Judge) or scene.lot is None:
        return
    if facts.verdict in ASKS_WHY:
        what, example = ASKS_WHY[facts.verdict]
        yield says_why(
            "verdict",
            f"{scene.lot.code} cannot {what} without a reason.",
            f'Say why: --because "{example}"',
        )
    elif status(scene.lot) is Status.HELD:
        yield says_why(
            "hold",
            f"{scene.lot.code} is on hold{_cause(scene.lot)}.",
            "Say with --because why that is gone.",
        )


def _cause(lot: LotState) -> str:
    """Return why a lot was put on hold, where that was said."""
    holds = [e for e in lot.entries if isinstance(e.facts, Judge)]
    return f": {holds[-1].draft.reason.rstrip('.')}" if holds[-1].draft.reason else ""


def check_is_of_what_counts(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What is checked is in force: not struck, nor corrected since."""
    if not isinstance(draft.facts, Check) or scene.checked is None or draft.corrects is not None:
        return
    if not scene.checked_is_in_force:
        yield impossible(
            "check",
            f"Entry {scene.checked.seq} was struck or corrected, so it counts no longer.",
            f"See which entry counts now: pottle journal --entry {scene.checked.seq}",
        )


def check_is_a_second_persons(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A check by who wrote the entry, or worked on the lot, is no second check."""
    if not isinstance(draft.facts, Check):
        return
    if own := _own_work(draft, scene):
        told, again = own
        yield remark("own check", f"This is no second check: {told}.", f"Have it checked: {again}")


def _own_work(draft: Draft, scene: Scene) -> tuple[str, str] | None:
    """Return that who checks did it too, and how somebody else checks it; None if not so."""
    entry, lot = scene.checked, scene.lot
    if entry is not None:
        is_own, told = entry.draft.by == draft.by, f"entry {entry.seq} is {draft.by}'s own"
        again = f"pottle check --entry {entry.seq} --by INITIALS"
    elif lot is not None:
        is_own, told = draft.by in makers_of(lot), f"{draft.by} worked on {lot.code}"
        again = f"pottle check {lot.code} --by INITIALS"
    else:
        return None
    return (told, again) if is_own else None


RULES: tuple[Rule, ...] = (
    decisions_say_why,
    check_is_of_what_counts,
    check_is_a_second_persons,
)
