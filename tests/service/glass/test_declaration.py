"""What a label declares follows from the lot, its materials and the house's country."""

import pytest

from ledger.domain.masters.allergens import Place
from ledger.service.glass.card import Declaration
from ledger.service.glass.serving import serving
from tests.keeper import Keeper
from tests.path import Lots


def _declared(keeper: Keeper, lot: str) -> Declaration:
    return serving(keeper.book, lot).declaration


def test_the_syrup_of_the_bench_declares_its_ingredients(walked: tuple[Keeper, Lots]) -> None:
    """Of a house in Ireland the list and the table are the Union's."""
    keeper, lots = walked
    keeper.do("house", country="IE")
    told = _declared(keeper, lots.packed)
    assert (told.listed.place, told.is_place_known) == (Place.EU, True)
    assert [item.name for item in told.listed.ingredients] == [
        "sugar",
        "water",
        "alcohol",
        "natural flavouring",
    ]
    assert told.as_drunk is not None
    # A glass of one part syrup and seven of soda water.
    assert told.as_drunk.sugars == pytest.approx(told.as_sold.sugars / 8)


def test_an_essence_is_not_drunk_as_it_is(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    assert _declared(keeper, lots.essence).as_drunk is None


def test_facts_that_are_missing_are_named_and_gone_once_told(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    before = {gap.material for gap in _declared(keeper, lots.packed).gaps}
    for code in sorted(before):
        keeper.do("material", code=code, change=True, allergens="none")
    assert before
    assert _declared(keeper, lots.packed).gaps == ()


def test_another_country_has_its_own_list(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("house", country="US")
    assert "natural flavor" in [
        item.name for item in _declared(keeper, lots.packed).listed.ingredients
    ]
    keeper.do("house", country="CA")
    told = _declared(keeper, lots.packed)
    assert (told.is_place_known, told.country, told.listed.place) == (False, "CA", Place.EU)


def test_liquorice_and_sulphites_ask_for_their_words(keeper: Keeper) -> None:
    """Regulation (EU) 1169/2011, Annex III, 3.1 and 3.3, Annex II, 12: in the drink."""
    keeper.do(
        "material", code="root", name="Liquorice", kind="other",
        constituents="glycyrrhizin 10%; sulphur dioxide 1%",
    )  # fmt: skip
    root = keeper.opens("receive", material="root", amount="100g")
    water = keeper.opens("receive", material="water", amount="10L")
    batch = keeper.opens("start", product="Root", kind="syrup", target="1L")
    keeper.do("add", lot=batch, source=water, amount="1L")
    assert _declared(keeper, batch).statements == ()
    keeper.do("add", lot=batch, source=root, amount="1g")
    # 12.5 mg/L of glycyrrhizin in a glass of 1:7.
    assert _declared(keeper, batch).statements == ("Contains liquorice.",)
    keeper.do("add", lot=batch, source=root, amount="9g")
    assert _declared(keeper, batch).statements == (
        "Contains liquorice: people suffering from hypertension should avoid excessive "
        "consumption.",
        "Contains sulphites.",
    )


def test_a_colour_of_the_six_asks_for_its_statement(keeper: Keeper) -> None:
    """Regulation (EC) 1333/2008, Annex V."""
    keeper.do(
        "material", code="red", name="Red", kind="colour", ingredient_name="allura red",
        additive="colour E 129",
    )  # fmt: skip
    red = keeper.opens("receive", material="red", amount="100g")
    water = keeper.opens("receive", material="water", amount="10L")
    batch = keeper.opens("start", product="Red", kind="syrup", target="1L")
    keeper.do("add", lot=batch, source=water, amount="1L")
    keeper.do("add", lot=batch, source=red, amount="1g")
    assert _declared(keeper, batch).statements == (
        "allura red: may have an adverse effect on activity and attention in children.",
    )
