"""What a label declares of bottles that are released: that its facts are in the book.

Guarantees: a gap is said and stops nothing. Refuses: to know what local law asks for.
"""

from collections.abc import Iterator

from ledger.domain.entries import Draft
from ledger.domain.lots.scene import Scene
from ledger.domain.rules.finding import Finding, Rule, remark
from ledger.domain.rules.release.barriers import to_release


def what_a_label_declares_is_known(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """The facts that a label declares are recorded of all that went into bottles for sale."""
    lot, codes = to_release(draft, scene), scene.concerns.undeclared
    if lot and codes:
        yield remark(
            "undeclared",
            f"What a label of {lot.code} declares, such as allergens, is not recorded of "
            f"{', '.join(codes)}.",
            f"pottle serving {lot.code} says what to record.",
        )


RULES: tuple[Rule, ...] = (what_a_label_declares_is_known,)
"""What is said of a release, about what labels declare."""
