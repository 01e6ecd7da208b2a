"""What a label declares, for machines."""

from ledger.service.glass.serving import serving
from reports.json.glass.serving import serving_answer
from tests.keeper import Keeper
from tests.path import Lots


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
