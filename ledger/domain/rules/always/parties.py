"""Parties: goods go to somebody, by the name that the book has.

Guarantees: a name that is nearly another of the book is asked about, and of one that will stay in a
text for good it is said. Refuses: without a reason, goods sent to nobody, or back from nobody.
"""

from collections.abc import Iterator

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Complaint, Contact, Draft, Move, Party, Receipt
from ledger.domain.entries.choices import MoveAs
from ledger.domain.lots.movements import EACH
from ledger.domain.lots.scene import Scene
from ledger.domain.rules.finding import Finding, Rule, asks, needs_reason, remark

WENT = {
    MoveAs.SALE: "sold",
    MoveAs.ON_RETURN: "sent on sale or return",
    MoveAs.SAMPLE: "given as a sample",
}
"""Ways to go to somebody who keeps it, in words; what is poured at a tasting is drunk at once."""


STAYS = "is named in the text of this entry, where nothing can be forgotten."
"""What is said of a name that nobody told of, after the name."""


def goods_go_to_somebody(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Who gets goods, or sends them back, is named."""
    facts = draft.facts
    if not isinstance(facts, Move) or facts.party or _was_not_named(scene):
        return
    if facts.moved_as is MoveAs.RETURNED:
        yield needs_reason(
            "party",
            f"{facts.amount.written} of {draft.lot} came back, and it is not said from whom.",
            'Name them with --from "NAME", or --from market or --from walk-in where nobody can; '
            "if it is not known, say why with --because.",
        )
    elif facts.moved_as in WENT:
        yield needs_reason(
            "party",
            f"{facts.amount.written} of {draft.lot} {_verb(facts)} {WENT[facts.moved_as]}, and it "
            "is not said to whom.",
            'Name them with --to "NAME", or --to market or --to walk-in where nobody can; '
            "if it is not known, say why with --because.",
        )


def _verb(facts: Move) -> str:
    is_many = facts.amount.measure is Measure.UEACH and facts.amount.amount != EACH
    return "are" if is_many else "is"


def _was_not_named(scene: Scene) -> bool:
    """Tell whether what is corrected named nobody either: it says so already."""
    was = scene.corrected
    return was is not None and isinstance(was.facts, Move) and was.facts.party is None


def name_is_the_book_s(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A name that differs little from one in the book is asked about."""
    if scene.near_names:
        near = " and ".join(f"“{name}”" for name in scene.near_names)
        verb = "is" if len(scene.near_names) == 1 else "are"
        yield asks(
            "name",
            f"“{party_of(draft)}” is not in the book, and {near} {verb}.",
            "Write it as the book has it; if it is somebody else, say so with --because.",
        )


def name_stays(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A name that nobody told of stands in the text of a delivery, which nothing takes away."""
    if isinstance(draft.facts, Move) and scene.brings_name and (name := draft.facts.party):
        # A shell would read these marks of a name as its own.
        typed = "NAME" if set(name) & set('"$`\\!') else f'"{name}"'
        yield remark(
            "name",
            f"“{name}” {STAYS}",
            f"So that later entries have a code instead: pottle party add {typed} --phone NUMBER",
        )


def party_of(draft: Draft) -> str | None:
    """Return whom outside the house a draft names."""
    match draft.facts:
        case Move(party=name) | Complaint(party=name) | Contact(party=name):
            return name
        case Party(name=name) | Receipt(supplier=name):
            return name
        case _:
            return None


RULES: tuple[Rule, ...] = (goods_go_to_somebody, name_is_the_book_s, name_stays)
