"""Cases: of bottles that are there, each with a number that is of no other.

Guarantees: a correction gives no case a number that is another's. Refuses: cases of what is not
bottled; without a reason, more bottles in them than are there.
"""

from collections.abc import Iterator

from ledger.domain.amounts.quantity import Measure, show
from ledger.domain.entries import Bottle, Cases, Draft, entries_of
from ledger.domain.entries.choices import LotType
from ledger.domain.lots.movements import EACH
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import latest
from ledger.domain.rules.finding import Finding, Rule, impossible, needs_reason, remark


def cases_are_of_bottles(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Cases hold what was bottled, and at least one of it."""
    facts, lot = draft.facts, scene.lot
    if not isinstance(facts, Cases):
        return
    if lot and lot.opened.lot_type is not LotType.PACKED:
        yield impossible(
            "cases",
            f"{lot.code} is not bottled, so nothing of it stands in cases.",
            f'Fill it first: pottle bottle {lot.code} "15 x 250mL"',
        )
    if not (facts.count and facts.holds):
        yield impossible(
            "cases",
            "Cases are at least one, with at least one bottle in each.",
            "Write how many of how many, such as 4 x 12.",
        )


def cases_hold_what_is_there(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """No more bottles stand in cases than are there, and in all told of than were filled."""
    facts, lot = draft.facts, scene.lot
    if not isinstance(facts, Cases) or lot is None or lot.measure is not Measure.UEACH:
        return
    these = facts.count * facts.holds
    if these * EACH > max(lot.on_hand_then, 0):
        yield needs_reason(
            "cases",
            f"{these} bottles in cases are more than were there of {lot.code}: the book says "
            f"{show(lot.on_hand_then, lot.measure)}.",
            "Count the cases again; if it is so, say why with --because.",
        )
        return
    filled = latest(lot, Bottle)
    before = sum(entry.facts.count * entry.facts.holds for entry in entries_of(lot.entries, Cases))
    if filled and before and before + these > filled.count:
        yield remark(
            "cases",
            f"{before} bottles of {lot.code} stand in cases by the book; with these {these} they "
            f"are more than the {filled.count} filled.",
            f"Strike the entry of cases that are no more, which this shows: pottle lot {lot.code}",
        )


def cases_keep_their_numbers(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A correction brings no further case, whose number may be another's."""
    facts, old = draft.facts, scene.corrected
    if not isinstance(facts, Cases) or old is None or not isinstance(old.facts, Cases):
        return
    if facts.count > old.facts.count:
        more = facts.count - old.facts.count
        yield impossible(
            "cases",
            f"{old.facts.count} cases have numbers by entry {old.seq}, and {facts.count} would "
            f"need {more} more.",
            f'Enter those by themselves: pottle case {draft.lot} "{more} x {facts.holds}"',
        )


RULES: tuple[Rule, ...] = (
    cases_are_of_bottles,
    cases_hold_what_is_there,
    cases_keep_their_numbers,
)
