"""Following: a batch is begun by a version of a formula that is in use and was checked.

Guarantees: a version that is withdrawn, or not valid yet, is followed with a reason only.
"""

from collections.abc import Iterator

from ledger.domain.entries import Draft, Formula, Start
from ledger.domain.lots.scene import Scene
from ledger.domain.masters.typed_list import parted
from ledger.domain.rules.finding import Finding, Rule, needs_reason, remark


def formula_is_in_use(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A batch is begun by a version that is neither withdrawn nor of a later day."""
    facts, formula = draft.facts, scene.control.formula
    if not isinstance(facts, Start) or formula is None:
        return
    which = f"Version {formula.version} of the formula {formula.code}"
    if scene.control.is_withdrawn:
        yield needs_reason(
            "withdrawn",
            f"{which} is withdrawn.",
            "Load a newer one: pottle formula load FILE (or say why with --because).",
        )
    day = draft.happened.local().date()
    if formula.valid_from and day < formula.valid_from:
        yield needs_reason(
            "not valid yet",
            f"{which} may be used from {formula.valid_from}; this is {day}.",
            "Begin the batch then, or say why with --because.",
        )


def formula_is_checked(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """A formula that nobody else has checked is remarked on."""
    facts = draft.facts
    if not isinstance(facts, Formula) or facts.prepared_by is None:
        return
    if facts.checked_by is None:
        yield remark(
            "unchecked",
            f"{facts.prepared_by} prepared version {facts.version} of {facts.code}: nobody has "
            "checked it.",
        )
    elif facts.checked_by == facts.prepared_by:
        yield remark(
            "unchecked",
            f"{facts.checked_by} prepared and checked version {facts.version} of {facts.code}: "
            "no other person has checked it.",
        )


def lists_are_reckoned(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """A list of ingredients in a formula's label text is remarked on: labels have their own."""
    facts = draft.facts
    if not isinstance(facts, Formula) or not facts.label_text:
        return
    if typed := parted(facts.label_text).typed:
        yield remark(
            "typed list",
            f"The label text of version {facts.version} of {facts.code} has a list of ingredients, "
            f'"{typed}"; a label leaves it off and has that of its lot as it was made.',
            "Leave it out; how a list calls something is said with: pottle material change CODE "
            '--ingredient-name "NAME"',
        )


RULES: tuple[Rule, ...] = (formula_is_in_use, formula_is_checked, lists_are_reckoned)
