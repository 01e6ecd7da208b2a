"""What a label declares of bottles that are released: that its facts are in the book.

Guarantees: each material that lacks one is told, with the command that records it. Refuses: to
know what local law asks for.
"""

from collections.abc import Iterator
from itertools import groupby

from ledger.domain.entries import Draft
from ledger.domain.lots.scene import Scene
from ledger.domain.masters.gaps import filled_by
from ledger.domain.rules.finding import Finding, Rule
from ledger.domain.rules.release.barriers import stands_in_the_way, to_release


def what_a_label_declares_is_known(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """The facts that a label declares are recorded of all that went into bottles for sale.

    A missing one stops no label, which may be needed before the papers come; it stops a release,
    after which somebody drinks what may hide an allergen.
    """
    lot = to_release(draft, scene)
    if lot is None:
        return
    for code, found in groupby(scene.concerns.undeclared, key=lambda gap: gap.material):
        gaps = list(found)
        what = " ".join(gap.what for gap in gaps)
        yield stands_in_the_way(
            f"{what} A label of {lot.code}, which has {code} in it, declares that.",
            "Record what its papers say",
            filled_by(gaps),
        )


RULES: tuple[Rule, ...] = (what_a_label_declares_is_known,)
"""What stands in the way of a release, of what labels declare."""
