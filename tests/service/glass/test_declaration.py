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
    keeper.do("material", code="gum", kind="gum", nutrition="none")
    gum = keeper.opens("receive", material="gum", amount="100g")
    keeper.do("add", lot=lots.syrup, source=gum, amount="1g")
    assert [gap.fact for gap in _declared(keeper, lots.syrup).gaps] == [
        "the class and number",
        "the allergens",
    ]
    keeper.do("material", code="gum", change=True, allergens="none", additive="stabiliser E 414")
    assert _declared(keeper, lots.syrup).gaps == ()


@pytest.mark.parametrize(
    ("country", "base", "told"),
    [
        (
            "IE",
            "sugar",
            (
                "Contains aspartame (a source of phenylalanine).",
                "With sugar(s) and sweetener(s).",
            ),
        ),
        (
            "IE",
            "water",
            ("Contains aspartame (a source of phenylalanine).", "With sweetener(s)."),
        ),
        ("US", "sugar", ("PHENYLKETONURICS: CONTAINS PHENYLALANINE.",)),
    ],
)
def test_a_sweetener_asks_for_its_words(
    country: str, base: str, told: tuple[str, ...], sqlite_keeper: Keeper
) -> None:
    """Regulation (EU) 1169/2011, Annex III, 2.1 to 2.3; 21 CFR 172.804(e)(2) (from memory)."""
    keeper = sqlite_keeper
    keeper.do("house", country=country)
    keeper.do("material", code="sweet", kind="other", additive="sweetener E 951")
    made = keeper.opens("start", product="Sweet", kind="syrup", target="2L")
    for material, amount in (("water", "1L"), (base, "1kg"), ("sweet", "1g")):
        source = keeper.opens(
            "receive", material=material, amount="5L" if amount == "1L" else "5kg"
        )
        keeper.do("add", lot=made, source=source, amount=amount)
    assert _declared(keeper, made).statements == told


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


def test_a_syrup_named_after_its_juice_tells_how_much_is_in_it(keeper: Keeper) -> None:
    """Regulation (EU) 1169/2011, Article 22(1)(a): 260 g in 1000 g."""
    keeper.do("material", code="juice", name="Lemon juice", kind="other", density="1.04")
    juice = keeper.opens("receive", material="juice", amount="1L")
    sugar = keeper.opens("receive", material="sugar", amount="5kg")
    batch = keeper.opens("start", product="Lemon syrup", kind="syrup", target="1L")
    keeper.do("add", lot=batch, source=sugar, amount="740g")
    keeper.do("add", lot=batch, source=juice, amount="250mL")
    told = _declared(keeper, batch).listed.ingredients
    assert [(item.name, item.percent) for item in told] == [
        ("sugar", None),
        ("lemon juice", pytest.approx(26.0)),
    ]


def test_much_caffeine_in_the_drink_asks_for_its_words(keeper: Keeper) -> None:
    """Regulation (EU) 1169/2011, Annex III, 4.1: above 150 mg/L of the drink, told in 100 mL."""
    keeper.do("house", country="IE")
    keeper.do("material", code="kola", name="Kola", kind="other", constituents="caffeine 40%")
    kola = keeper.opens("receive", material="kola", amount="100g")
    water = keeper.opens("receive", material="water", amount="10L")
    batch = keeper.opens("start", product="Kola", kind="syrup", target="1L")
    keeper.do("add", lot=batch, source=water, amount="1L")
    keeper.do("add", lot=batch, source=kola, amount="2g")
    # 100 mg/L in a glass of 1:7.
    assert _declared(keeper, batch).statements == ()
    keeper.do("add", lot=batch, source=kola, amount="2g")
    assert _declared(keeper, batch).statements == (
        "High caffeine content. Not recommended for children or pregnant or breast-feeding women "
        "(20 mg/100 ml).",
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
