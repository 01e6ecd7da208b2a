"""Labels: for goods that may leave, and no more than there are bottles.

Guarantees: labels of what may not leave are printed with a reason only; more labels than bottles,
or labels printed again, are remarked on. Refuses: without a reason, labels that do not add up.
"""

from collections.abc import Iterator

from ledger.domain.entries import Draft, Labels
from ledger.domain.lots.labels import count_of, why_not
from ledger.domain.lots.scene import Scene
from ledger.domain.rules.finding import Finding, Rule, needs_reason, remark


def labels_are_for_what_may_leave(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Labels are printed for lots that may leave."""
    if not isinstance(draft.facts, Labels) or scene.lot is None or not draft.facts.printed:
        return
    if why := why_not(scene.lot, draft.happened.local().date()):
        yield needs_reason(
            "labels",
            why,
            "Print no labels for it; if it must be, say why with --because: they are printed with "
            f"{draft.facts.across or 'SPECIMEN'} across.",
        )


def labels_are_one_a_bottle(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """No more bottle labels are printed than there are bottles, and once."""
    if not isinstance(draft.facts, Labels) or scene.lot is None or not draft.facts.for_bottles:
        return
    before, more = count_of(scene.lot), draft.facts.for_bottles
    total = before.printed + more
    told = f"{before.printed} labels of {scene.lot.code} were printed before"
    if total > before.bottles:
        what = f"{told}; with these {total}" if before.printed else f"{more} labels"
        what = f"{what} are more than its {before.bottles} bottles."
    elif before.printed:
        what = f"{told}, and these besides."
    else:
        return
    yield remark(
        "labels",
        what,
        f"Say what becomes of all of them: pottle label {scene.lot.code} --used N --spoiled N",
    )


def labels_add_up(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """No more labels are used and spoiled than were printed for the lot."""
    if not isinstance(draft.facts, Labels):
        return
    before = count_of(scene.lot) if scene.lot else None
    printed = draft.facts.for_bottles + (before.printed if before else 0)
    gone = (draft.facts.used or 0) + (draft.facts.spoiled or 0)
    gone += before.used + before.spoiled if before else 0
    if gone > printed:
        yield needs_reason(
            "labels",
            f"{gone} labels used and spoiled are more than the {printed} printed for {draft.lot}.",
            "Count the labels again; if it is so, say why with --because.",
        )


RULES: tuple[Rule, ...] = (
    labels_are_for_what_may_leave,
    labels_are_one_a_bottle,
    labels_add_up,
)
