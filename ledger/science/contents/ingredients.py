"""The list of ingredients of a lot: what is in it, in descending order by mass.

Guarantees: masses are those of the lot as it was made; what is bought as a solution is opened into
what it is made of; oils stand together as flavouring, each additive with its class; what is missing
of a material is told as a gap, and the list stands all the same. Refuses: to leave an allergen out.

References:
    Regulation (EU) No 1169/2011, Articles 18 to 21, Annex VII: order, additives, flavourings.
    Regulation (EC) No 1334/2008, Article 16: the word natural.
    21 CFR 101.4(a)(1) (order), 101.22(a)(3), (h)(1) and (j) (flavors and preservatives). The
    articles are from memory; the order and the rule for quinine stand in label_law.csv.
"""

import re
from collections.abc import Iterable, Mapping, Sequence

from msgspec import Struct

from ledger.domain.entries import Material
from ledger.domain.entries.choices import HowObtained, MaterialKind
from ledger.domain.masters.allergens import Allergen, Place, allergens_in
from ledger.domain.masters.gaps import AIDS, Gap, gaps_of
from ledger.science.contents.composition import OIL, WATER_KG_PER_M3, Contents

BY_HAND = frozenset({"quinine", "caffeine"})
"""Flavourings that are named right after the word (Regulation (EU) 1169/2011, Annex VII, D 2)."""
_NUMBER = re.compile(r"\bE ?([0-9]{3,4}[a-z]?)\b", re.IGNORECASE)


class Ingredient(Struct, frozen=True):
    """An ingredient of a list."""

    name: str
    """As the list names it."""
    mass_mg: float
    """Its mass in the lot, in mg."""
    allergens: tuple[str, ...] = ()
    """Allergens it carries, as the place names them."""
    materials: tuple[str, ...] = ()
    """Codes of the materials it stands for."""
    percent: float | None = None
    """Its share of the lot's mass in per cent, where a list has to tell it; else None."""


class Listed(Struct, frozen=True):
    """A list of ingredients with what goes with it."""

    place: Place
    """Whose rules it follows."""
    ingredients: tuple[Ingredient, ...]
    """The ingredients, most first."""
    left_out: tuple[str, ...]
    """Codes of materials that were filtered off again, as processing aids are."""
    gaps: tuple[Gap, ...]
    """What is missing."""

    @property
    def allergens(self) -> tuple[str, ...]:
        """All allergens, in the order of the list."""
        return tuple(dict.fromkeys(name for item in self.ingredients for name in item.allergens))


class Law(Struct, frozen=True):
    """What a list is set by."""

    place: Place
    """Whose rules."""
    allergens: tuple[Allergen, ...]
    """The lists of allergens."""


def listed(
    contents: Contents, used: Iterable[Material], unknown: Mapping[str, Material], law: Law
) -> Listed:
    """Return the list of ingredients of a lot.

    Args:
        contents: What the lot contains.
        used: Every material that went into it, by whatever way.
        unknown: The material of each lot whose mass is not known, by the lot's code.
        law: What the list is set by.
    """
    by_code = {material.code: material for material in used}
    found = [
        *_liquids(contents, by_code.values(), law),
        *_flavouring(contents, by_code, law),
        *_others(contents, by_code, law),
        *_unweighed(contents, unknown, law),
        *_traces(by_code.values(), law),
    ]
    shown = {code for item in found for code in item.materials}
    aids = sorted(
        code for code, material in by_code.items() if material.sort in AIDS and code not in shown
    )
    kept = [material for code, material in sorted(by_code.items()) if code not in aids]
    return Listed(
        place=law.place,
        ingredients=tuple(sorted(_together(found), key=lambda item: -item.mass_mg)),
        left_out=tuple(aids),
        gaps=tuple(gap for material in kept for gap in gaps_of(material)),
    )


def _liquids(contents: Contents, used: Iterable[Material], law: Law) -> list[Ingredient]:
    """Return sugar, water and alcohol, which the replay keeps by what they are."""
    materials = list(used)
    masses = (
        (MaterialKind.WATER, "water", contents.water_mg),
        (MaterialKind.SUGAR, "sugar", contents.sucrose_mg),
        (MaterialKind.ETHANOL, "alcohol", contents.ethanol_mg),
    )
    return [
        Ingredient(
            _own_name(own, usual) if sort is MaterialKind.SUGAR else usual,
            mass,
            _carried(own, law),
            tuple(sorted(material.code for material in own)),
        )
        for sort, usual, mass in masses
        if mass > 0
        for own in [[material for material in materials if material.sort is sort]]
    ]


def _own_name(own: Sequence[Material], usual: str) -> str:
    names = {material.ingredient_name or usual for material in own}
    return names.pop() if len(names) == 1 else usual


def _carried(own: Iterable[Material], law: Law) -> tuple[str, ...]:
    told = (allergens_in(material.allergens, law.allergens, law.place) for material in own)
    return tuple(dict.fromkeys(name for names in told for name in names))


def _flavouring(
    contents: Contents, materials: Mapping[str, Material], law: Law
) -> list[Ingredient]:
    oils = {code: part for code, part in contents.oils().items() if part.mass_mg > 0}
    own = [materials[code] for code in oils if code in materials]
    if not oils:
        return []
    name = flavouring_name(own, law.place)
    mass = sum(part.mass_mg for part in oils.values())
    return [Ingredient(name, mass, _carried(own, law), tuple(sorted(oils)))]


def flavouring_name(oils: Sequence[Material], place: Place) -> str:
    """Return what a list calls essential oils: natural where no papers say otherwise of any.

    An oil is natural that was obtained by a physical process; of one whose way is not recorded the
    word is not used.
    """
    natural = [oil.how_obtained not in (None, HowObtained.SYNTHETIC) for oil in oils]
    if place is Place.US:
        artificial = any(oil.how_obtained is HowObtained.SYNTHETIC for oil in oils)
        if all(natural):
            return "natural flavor"
        if artificial:
            return "natural and artificial flavors" if any(natural) else "artificial flavor"
        return "flavor"
    return "natural flavouring" if all(natural) else "flavouring"


def _others(contents: Contents, materials: Mapping[str, Material], law: Law) -> list[Ingredient]:
    found = []
    for key, part in contents.parts.items():
        material = materials.get(key.material)
        if key.sort == OIL or material is None or part.mass_mg <= 0:
            continue
        found.append(
            Ingredient(
                additive_name(material, law.place),
                part.mass_mg,
                _carried([material], law),
                (material.code,),
            )
        )
    return found


def additive_name(material: Material, place: Place) -> str:
    """Return how a list names a material that may be an additive.

    >>> benzoate = Material("benzoate", "Benzoate", MaterialKind.PRESERVATIVE,
    ...     ingredient_name="sodium benzoate", additive="preservative E 211")
    >>> additive_name(benzoate, Place.EU), additive_name(benzoate, Place.US)
    ('preservative (E 211)', 'sodium benzoate (preservative)')
    """
    name = material.ingredient_name or material.name.lower()
    by_hand = next((word for word in BY_HAND if word in name.lower()), None)
    if by_hand and place is not Place.US:
        return f"flavouring ({by_hand})"
    if material.additive is None:
        return name
    number = additive_number(material)
    klass = _NUMBER.sub("", material.additive).strip(" ,:;()").lower()
    if place is Place.US:
        # Of additives the United States ask for the function of preservatives alone (101.22(j)).
        return f"{name} ({klass})" if material.sort is MaterialKind.PRESERVATIVE else name
    called = number or name
    return f"{klass} ({called})" if klass else called


def additive_number(material: Material) -> str | None:
    """Return the E number of a material as an additive, such as E 150d; None where it has none."""
    number = _NUMBER.search(material.additive or "")
    return f"E {number[1].lower()}" if number else None


def _unweighed(contents: Contents, unknown: Mapping[str, Material], law: Law) -> list[Ingredient]:
    """Return what no mass is known of, at its volume of water: where it stands is a guess."""
    return [
        Ingredient(
            flavouring_name([material], law.place)
            if material.sort is MaterialKind.OIL
            else additive_name(material, law.place),
            contents.unknown_ul[lot] * WATER_KG_PER_M3 / 1000,
            _carried([material], law),
            (material.code,),
        )
        for lot, material in sorted(unknown.items())
        if lot in contents.unknown_ul
    ]


def _traces(used: Iterable[Material], law: Law) -> list[Ingredient]:
    """Return what was filtered off again and carries allergens, which may have stayed.

    References:
        Regulation (EU) No 1169/2011, Articles 20(b) and 21; Annex II: a processing aid that comes
        of an allergen is named all the same (from memory).
    """
    return [
        Ingredient(additive_name(material, law.place), 0.0, carried, (material.code,))
        for material in used
        if material.sort in AIDS and (carried := _carried([material], law))
    ]


def _together(found: Iterable[Ingredient]) -> list[Ingredient]:
    """Return ingredients with those of one name as one."""
    by_name: dict[str, Ingredient] = {}
    for item in found:
        was = by_name.get(item.name, Ingredient(item.name, 0.0))
        by_name[item.name] = Ingredient(
            item.name,
            was.mass_mg + item.mass_mg,
            tuple(dict.fromkeys((*was.allergens, *item.allergens))),
            tuple(sorted({*was.materials, *item.materials})),
        )
    return list(by_name.values())
