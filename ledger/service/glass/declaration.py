"""What a label declares of a lot: ingredients, allergens, nutrition and the statements of the law.

Guarantees: everything is reckoned from the lot as it was made and from what the book says of its
materials; whose rules count follows from the house's country. What is missing is a gap beside the
rest, which is told all the same. Refuses: to say that a label complies.
"""

from collections.abc import Iterable, Mapping

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.entries import House, Material
from ledger.domain.masters.allergens import Place, place_of
from ledger.domain.masters.gaps import NUTRITION, PACKING, Gap
from ledger.science.contents.emphasised import with_quantities
from ledger.science.contents.ingredients import Law, Listed, additive_number, listed
from ledger.science.contents.nutrition import Nutrition, nutrition
from ledger.science.contents.serving import Glass
from ledger.science.doubt.conformity import Verdict
from ledger.service.account.contents import LotContents
from ledger.service.account.label_law import allergens, statements
from ledger.service.account.shipped import label_words
from ledger.service.glass.card import Declaration, Pouring


class Sold(Struct, frozen=True):
    """What is declared."""

    made: LotContents
    """The lot."""
    name: str
    """What it is called."""
    materials: Mapping[str, Material]
    """The materials of every received lot that it is made of, by code."""
    is_essence: bool
    """Whether it is dosed into a syrup that is not known."""


def declaration(sold: Sold, house: House | None, pourings: tuple[Pouring, ...]) -> Declaration:
    """Return what a label of a lot declares.

    Args:
        sold: What is declared.
        house: The maker's house, whose country decides whose rules count.
        pourings: The ways to pour it, with what they are held against.
    """
    place = place_of(house.country if house else None)
    made, contents = sold.made, sold.made.contents
    used = [item for item in sold.materials.values() if item.sort not in PACKING]
    unknown = {
        lot: sold.materials[made.received[lot].material]
        for lot in contents.unknown_ul
        if lot in made.received
    }
    found = with_quantities(
        listed(contents, used, unknown, Law(place or Place.EU, allergens())),
        sold.name,
        sold.materials,
        contents,
    )
    as_sold = nutrition(contents, sold.materials)
    as_drunk = None if sold.is_essence else _drunk(pourings[0].glass, sold.materials)
    return Declaration(
        is_place_known=place is not None,
        country=house.country if house else None,
        listed=found,
        as_sold=as_sold,
        as_drunk=as_drunk,
        statements=(
            *_asked(found.place, pourings),
            *_by_number(found, used, has_sugar=contents.sucrose_mg > 0),
        ),
        gaps=(*found.gaps, *_untold(as_sold, sold.materials)),
    )


def _drunk(glass: Glass, materials: Mapping[str, Material]) -> Nutrition:
    return nutrition(replace(glass.syrup, volume_ul=glass.volume_ul), materials)


def _asked(place: Place, pourings: tuple[Pouring, ...]) -> tuple[str, ...]:
    """Return the statements that limits ask for which are reached, or may be."""
    # The United Kingdom kept the Union's rules for labels.
    places = {place.value, "EU"} if place is Place.UK else {place.value}
    told: dict[str, None] = {}
    for way in pourings:
        for served in way.concerns:
            for item in served.limits:
                words = label_words(item.limit.code)
                if words and item.limit.place in places and item.verdict is not Verdict.BELOW:
                    in_100_ml = served.concern.mg_per_l_drink / 10
                    told[words.format(mg=f"{in_100_ml:.0f}")] = None
    # A statement that says more takes the place of the one it begins with.
    return tuple(
        words
        for words in told
        if not any(other != words and other.startswith(words.rstrip(".")) for other in told)
    )


def _by_number(found: Listed, used: Iterable[Material], *, has_sugar: bool) -> tuple[str, ...]:
    """Return the statements that additives call for by their numbers."""
    listed_codes = {code for item in found.ingredients for code in item.materials}
    told: dict[str, None] = {}
    for material in used:
        number = additive_number(material)
        for statement in statements():
            if (
                number in statement.numbers
                and found.place in statement.places
                and material.code in listed_codes
            ):
                name = material.ingredient_name or material.name
                words = statement.words
                if not has_sugar:
                    words = statement.without_sugar or words
                told[words.format(name=name)] = None
    return tuple(told)


def _untold(of: Nutrition, materials: Mapping[str, Material]) -> list[Gap]:
    """Return the materials whose nutrition is not known."""
    return [
        Gap(
            code,
            NUTRITION,
            f"What 100 g of {materials[code].name} hold is not recorded, so it counts as nothing.",
            '--nutrition "carbohydrate 80; sugars 78"',
        )
        for code in of.unknown
        if code in materials
    ]
