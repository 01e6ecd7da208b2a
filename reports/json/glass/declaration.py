"""What a label declares, for machines: figures are decimal strings, not rounded for a label."""

from ledger.domain.masters.allergens import Place
from ledger.science.contents.declared import Line, eu_lines, us_lines
from ledger.science.contents.ingredients import Ingredient
from ledger.science.contents.nutrition import Nutrition
from ledger.science.ranges import significant
from ledger.service.glass.card import Declaration
from reports.json.kit.answer import Answer, Figure


class IngredientTold(Answer, frozen=True):
    """An ingredient of the list."""

    name: str
    """As the list names it."""
    percent_mass: Figure
    """Its share of the mass."""
    allergens: tuple[str, ...]
    """Allergens it carries, as the place names them."""
    materials: tuple[str, ...]
    """Codes of the materials it stands for."""


class LineTold(Answer, frozen=True):
    """A line as a label declares it."""

    name: str
    """What is declared."""
    amount: str
    """How much, rounded, with its unit."""


class NutritionPart(Answer, frozen=True):
    """The nutrition of 100 mL."""

    energy_kj: Figure
    """Energy in kJ."""
    energy_kcal: Figure
    """Energy in kcal."""
    fat_g: Figure
    """Fat."""
    saturates_g: Figure
    """Of which saturates."""
    carbohydrate_g: Figure
    """Carbohydrate."""
    sugars_g: Figure
    """Of which sugars."""
    fibre_g: Figure
    """Fibre."""
    protein_g: Figure
    """Protein."""
    salt_g: Figure
    """Salt."""
    alcohol_g: Figure
    """Ethanol."""
    declared: tuple[LineTold, ...]
    """As a label of the place declares 100 mL, in the order of the law."""


class NutritionTold(Answer, frozen=True):
    """Nutrition as sold and as drunk."""

    as_sold: NutritionPart
    """Of 100 mL as it is sold."""
    as_drunk: NutritionPart | None
    """Of 100 mL of the drink; null where the syrup is not known."""


def ingredients_told(of: Declaration) -> tuple[IngredientTold, ...]:
    """Return the list of ingredients, most first."""
    whole = sum(item.mass_mg for item in of.listed.ingredients) or 1.0
    return tuple(_ingredient(item, whole) for item in of.listed.ingredients)


def nutrition_told(of: Declaration) -> NutritionTold:
    """Return the nutrition as sold and as drunk."""
    place = of.listed.place
    return NutritionTold(
        as_sold=_nutrition(of.as_sold, place),
        as_drunk=None if of.as_drunk is None else _nutrition(of.as_drunk, place),
    )


def _ingredient(item: Ingredient, whole_mg: float) -> IngredientTold:
    return IngredientTold(
        name=item.name,
        percent_mass=significant(100 * item.mass_mg / whole_mg, 4),
        allergens=item.allergens,
        materials=item.materials,
    )


def _nutrition(of: Nutrition, place: Place) -> NutritionPart:
    lines: tuple[Line, ...] = us_lines(of) if place is Place.US else eu_lines(of)
    return NutritionPart(
        energy_kj=significant(of.kj, 4),
        energy_kcal=significant(of.kcal, 4),
        fat_g=significant(of.fat, 4),
        saturates_g=significant(of.saturates, 4),
        carbohydrate_g=significant(of.carbohydrate, 4),
        sugars_g=significant(of.sugars, 4),
        fibre_g=significant(of.fibre, 4),
        protein_g=significant(of.protein, 4),
        salt_g=significant(of.salt, 4),
        alcohol_g=significant(of.alcohol, 4),
        declared=tuple(LineTold(line.name, line.amount) for line in lines),
    )
