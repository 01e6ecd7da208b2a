"""What is said at once of a material and of goods that come in, before anything is made of them.

Guarantees: what cannot be true of shares is refused; a kind of goods known for a substance of
concern is remarked on, and so is a name that no limit speaks of; goods that can hurt somebody come
in with their usual caution. Refuses: to show a figure of another material as an example.
"""

from collections.abc import Iterator

from ledger.domain.entries import Draft, Material, Receipt
from ledger.domain.lots.scene import Scene
from ledger.domain.rules.figures import share_exactly
from ledger.domain.rules.finding import Finding, Rule, impossible, remark

WHOLE_PPM = 1_000_000
"""All of a material, in parts per million."""


def constituents_are_parts(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """The constituents of a material are together no more than all of it."""
    facts = draft.facts
    if not isinstance(facts, Material):
        return
    together = sum(item.fraction_ppm for item in facts.constituents)
    if together > WHOLE_PPM:
        yield impossible(
            "constituents",
            f"The constituents of {facts.code} come to {share_exactly(together)}, more than all of "
            "it.",
            "Check the shares; a certificate gives them in % of the whole.",
        )


def usual_concern_is_told(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Goods of a kind known for a substance of concern tell how much of it they carry."""
    facts, usual = draft.facts, scene.concerns.usual
    if not isinstance(facts, Material) or not usual:
        return
    shares = [f"{item.substance} {share_exactly(item.fraction_ppm)}" for item in facts.constituents]
    listed = "; ".join((*shares, *(f"{name} SHARE%" for name in usual)))
    yield remark(
        "usual concern",
        f"{facts.name} is of a kind known to carry {' and '.join(usual)}, and the book does not "
        "know how much: it holds none of it against a limit.",
        f"Record it from the certificate: pottle material change {facts.code} "
        f'--constituents "{listed}"',
    )


def goods_are_stored_with_care(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What can hurt somebody is said when it comes in, not only when it is served."""
    if not isinstance(draft.facts, Receipt) or draft.corrects or not scene.concerns.neat:
        return
    yield remark(
        "handled with care",
        scene.concerns.neat,
        "Its papers and local law say how it is kept.",
    )


def constituents_have_limits(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A name that no limit speaks of is held against none, which may be a slip of spelling."""
    names = scene.concerns.unlimited
    if not names or not isinstance(draft.facts, Material):
        return
    meant = [f"{other} for {name}" for name, other in names.items() if other]
    yield remark(
        "no limit",
        f"No limit in force speaks of {' or '.join(names)}: what is recorded of it is held against "
        "none.",
        f"If you mean {' and '.join(meant)}, say so with pottle material change."
        if meant
        else "See what is limited: pottle limits",
    )


RULES: tuple[Rule, ...] = (
    constituents_are_parts,
    usual_concern_is_told,
    constituents_have_limits,
    goods_are_stored_with_care,
)
