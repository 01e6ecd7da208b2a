"""What a label declares, in the words of a list and of a table."""

from ledger.domain.masters.allergens import Place
from ledger.science.contents.ingredients import Ingredient, Listed
from ledger.service.glass.serving import serving
from reports.words.glass import declaration as module
from reports.words.glass.declaration import (
    EXEMPTIONS,
    contains_text,
    declared_lines,
    exemption_lines,
    ingredients_text,
    nutrition_table,
)
from tests.keeper import Keeper
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said
from tests.path import Lots

MILK = Ingredient("skimmed milk powder", 5.0, ("milk",))
NUTS = Ingredient("orgeat", 4.0, ("tree nuts",))


def _listed(place: Place, *items: Ingredient) -> Listed:
    return Listed(place, items, (), ())


def test_allergens_stand_in_capitals_in_their_ingredient_or_beside_it() -> None:
    """Regulation (EU) 1169/2011, Article 21(1)."""
    listed = _listed(Place.EU, Ingredient("sugar", 9.0), MILK, NUTS)
    assert ingredients_text(listed) == (
        "Ingredients: sugar, SKIMMED MILK POWDER, orgeat (TREE NUTS)."
    )
    assert contains_text(listed) is None


def test_a_share_stands_behind_its_ingredient_in_two_figures() -> None:
    """Regulation (EU) 1169/2011, Article 22 and Annex VIII, 3."""
    juice = Ingredient("lemon juice", 9.0, percent=12.345)
    nuts = Ingredient("orgeat", 4.0, ("nuts",), percent=0.5)
    assert ingredients_text(_listed(Place.EU, juice, nuts)) == (
        "Ingredients: lemon juice (12 %), orgeat (NUTS) (0.5 %)."
    )


def test_the_united_states_have_a_line_of_what_it_contains() -> None:
    """FD&C Act, section 403(w)(1)(A), from memory."""
    assert contains_text(_listed(Place.US, MILK, NUTS)) == "Contains: Milk, Tree nuts."
    assert contains_text(_listed(Place.US, Ingredient("sugar", 9.0))) is None


def test_a_house_without_a_country_is_told_what_the_list_is_set_by(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    assert declared_lines(serving(keeper.book, lots.packed)) == [
        "Ingredients: sugar, water, alcohol, natural flavouring.",
        "Not listed, as processing aids that are filtered off: carb.",
        "No rules for lists are kept without the house's country: it is set as for the European "
        "Union. Say where the house is with: pottle house --country CODE",
    ]


def test_who_may_be_exempt_is_told_with_its_source_in_every_place() -> None:
    """Regulation (EU) No 1169/2011, Annex V, 10, 18, 19; 21 CFR 101.9(j) (label_law.csv)."""
    told = [line for place in Place for line in (f"{place}:", *exemption_lines(place))]
    check_golden("exemptions.txt", "".join(f"{line}\n" for line in told))


def test_the_table_has_a_column_as_sold_and_one_as_drunk(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    table = nutrition_table(serving(keeper.book, lots.packed))
    assert table.heads == ("nutrition (EU)", "100 mL as sold", "100 mL as drunk")
    assert table.rows[:1] == (("energy", "1054 kJ / 248 kcal", "132 kJ / 31 kcal"),)
    assert nutrition_table(serving(keeper.book, lots.essence)).heads == (
        "nutrition (EU)",
        "100 mL as sold",
    )


def test_a_panel_of_the_united_states_is_for_a_glass(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("house", country="US")
    table = nutrition_table(serving(keeper.book, lots.packed))
    assert table.heads == ("nutrition (US)", "in a glass", "100 mL as sold")
    assert table.rows[:2] == (("calories", "70", "250"), ("total fat", "0 g", "0 g"))


def test_who_may_be_exempt_is_told_with_its_source_for_every_place() -> None:
    assert set(EXEMPTIONS) == set(Place)
    assert exemption_lines(Place.US)[0] == (
        "Whether it must stand on the label local law decides. Exempt may be:"
    )
    assert all("Annex V" in line or "101.9" in line for line in exemption_lines(Place.UK)[1:])


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
