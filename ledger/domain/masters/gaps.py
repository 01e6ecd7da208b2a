"""What a label must tell of a material and the book may not know: its gaps.

Guarantees: each gap is a sentence, with the words that fill it. Refuses: to take what nobody told
for what is not there; an allergen that papers name and the book does not is the dearest gap of all.
"""

from collections.abc import Sequence

from msgspec import Struct

from ledger.domain.entries import Material
from ledger.domain.entries.choices import MaterialKind

ADDITIVES = frozenset(
    {MaterialKind.ACID, MaterialKind.PRESERVATIVE, MaterialKind.GUM, MaterialKind.COLOUR}
)
"""Kinds of material that stand on a list with their class."""
AIDS = frozenset({MaterialKind.CLARIFIER, MaterialKind.FILTER})
"""Kinds of material that are filtered off again and stand on no list."""
PACKING = frozenset({MaterialKind.BOTTLE, MaterialKind.CLOSURE, MaterialKind.LABEL})
"""Kinds of material that a lot is packed in."""
NUTRITION = "the nutrition"
"""What is missing of a material whose nutrition is not known."""


class Gap(Struct, frozen=True):
    """A fact of a material that a label lacks."""

    material: str
    """Code of the material."""
    fact: str
    """What is missing, in a few words."""
    what: str
    """What is missing, a sentence."""
    option: str
    """The option that records it."""


def gaps_of(material: Material) -> list[Gap]:
    """Return the facts of a material that a list of ingredients lacks.

    None are asked of what stands on no list.

    >>> [gap.option for gap in gaps_of(Material("gum", "Gum arabic", MaterialKind.GUM))]
    ['--additive "CLASS AND NUMBER"', '--allergens "NONE OR WHICH"']
    """
    code, name, sort = material.code, material.name, material.sort
    if sort in AIDS | PACKING:
        return []
    gaps = []
    if sort in ADDITIVES and material.additive is None:
        what = f"The class and number of the additive {name} are not recorded."
        gaps.append(Gap(code, "the class and number", what, '--additive "CLASS AND NUMBER"'))
    if material.allergens is None and sort is not MaterialKind.WATER:
        what = f"Whether {name} carries allergens is not recorded."
        gaps.append(Gap(code, "the allergens", what, '--allergens "NONE OR WHICH"'))
    if sort is MaterialKind.OTHER and material.ingredient_name is None:
        what = f"What a list of ingredients calls {name} is not recorded."
        gaps.append(Gap(code, "the name on a list", what, '--ingredient-name "NAME"'))
    return gaps


def filled_by(gaps: Sequence[Gap]) -> str:
    """Return the command that fills the gaps of one material.

    >>> filled_by(gaps_of(Material("sugar", "White sugar", MaterialKind.SUGAR)))
    'pottle material change sugar --allergens "NONE OR WHICH"'
    """
    return f"pottle material change {gaps[0].material} {' '.join(gap.option for gap in gaps)}"
