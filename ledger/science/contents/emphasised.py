"""How much a lot has of an ingredient that its name emphasises.

Guarantees: told of what is named after the product and is no flavouring, additive, sugar, water or
alcohol; by mass as it was made. Refuses: a share of a lot in which the mass of anything is unknown,
and of a tincture or an extract in alcohol, of which a list has only what is dissolved.

References:
    Regulation (EU) No 1169/2011, Article 22(1)(a) and Annex VIII, 3: the quantity at the time of
    use, in per cent; 1(a)(iii): none of what flavours in small quantities (from memory).
"""

import re
from collections.abc import Mapping

from msgspec.structs import replace

from ledger.domain.entries import Material
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.masters.allergens import Place
from ledger.science.contents.composition import Contents
from ledger.science.contents.ingredients import BY_HAND, Ingredient, Listed

COMMON = frozenset({"syrup", "essence", "extract", "juice", "base", "with", "from", "soda"})
"""Words that say what kind of thing it is, not of what."""
_WORD = re.compile(r"[^\W\d_]{4,}")


def with_quantities(
    found: Listed, product: str, materials: Mapping[str, Material], contents: Contents
) -> Listed:
    """Return a list with the share of each ingredient that the product is named after.

    Args:
        found: The list.
        product: The name of the product.
        materials: What went into the lot, by code.
        contents: What the lot contains.
    """
    if found.place is Place.US or contents.unknown_ul or not contents.mass_mg:
        return found
    named = _words(product)
    whole = frozenset(
        code
        for code, item in materials.items()
        if item.sort is MaterialKind.OTHER and item.additive is None
    ) - {key.material for key, part in contents.parts.items() if part.dissolved_in_mg}
    return replace(
        found,
        ingredients=tuple(
            replace(item, percent=100 * item.mass_mg / contents.mass_mg)
            if named & _words(item.name) and _is_itself(item, whole)
            else item
            for item in found.ingredients
        ),
    )


def _words(text: str) -> set[str]:
    """Return the words that a text names things by.

    >>> sorted(_words("Lemon juice syrup, No. 2"))
    ['lemon']
    """
    return set(_WORD.findall(text.lower())) - COMMON


def _is_itself(item: Ingredient, whole: frozenset[str]) -> bool:
    is_flavour = any(word in item.name.lower() for word in BY_HAND)
    return bool(item.mass_mg and item.materials and whole.issuperset(item.materials)) and (
        not is_flavour
    )
