"""What a label declares, for machines."""

from msgspec.structs import replace

from ledger.domain.masters.allergens import Place
from ledger.science.contents.nutrition import Nutrition
from ledger.service.glass.serving import serving
from reports.json.glass.declaration import ingredients_told, nutrition_told
from reports.json.glass.serving import serving_answer
from tests.keeper import Keeper
from tests.path import Lots
from tests.reports.json.kept import check


def test_ingredients_and_nutrition_are_told_as_figures(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    told = serving_answer(serving(keeper.book, lots.packed))
    assert [item.name for item in told.ingredients][:2] == ["sugar", "water"]
    assert round(sum(float(item.percent_mass) for item in told.ingredients), 1) == 100.0
    assert told.ingredients[0].materials == ("sugar",)
    sold, drunk = told.nutrition.as_sold, told.nutrition.as_drunk
    assert drunk is not None
    assert (sold.sugars_g, drunk.sugars_g) == ("61.1", "7.638")
    assert [line.amount for line in drunk.declared][3:5] == ["7.6 g", "7.6 g"]
    assert (told.place, told.is_place_known, told.statements) == ("EU", False, ())


def test_of_an_essence_nothing_is_told_as_drunk(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    assert serving_answer(serving(keeper.book, lots.essence)).nutrition.as_drunk is None


AS_SOLD = Nutrition(
    fat=1.23456, saturates=0.123456, carbohydrate=61.23456, sugars=60.12345, fibre=0.234567,
    protein=2.345678, alcohol=0.456789, sodium=0.0987654,
)  # fmt: skip


def test_every_figure_of_what_is_declared_is_the_kept_one(walked: tuple[Keeper, Lots]) -> None:
    """In the European Union with the drink, and in the United States without."""
    keeper, lots = walked
    declared = serving(keeper.book, lots.packed).declaration
    here = replace(declared, as_sold=AS_SOLD)
    there = replace(here, listed=replace(here.listed, place=Place.US), as_drunk=None)
    check(
        "declaration",
        nutrition_told(here),
        nutrition_told(there),
        *ingredients_told(here),
    )
