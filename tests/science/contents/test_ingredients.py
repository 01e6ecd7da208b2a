"""The list of ingredients stands in descending order by mass and names what the law names."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.entries import Material
from ledger.domain.entries.choices import HowObtained, MaterialKind
from ledger.domain.masters.allergens import Place
from ledger.science.contents.composition import OIL, REST, Contents, Part, PartKey, scaled
from ledger.science.contents.ingredients import (
    Law,
    additive_name,
    additive_number,
    flavouring_name,
    listed,
)
from ledger.service.account.label_law import allergens

EU, US = Law(Place.EU, allergens()), Law(Place.US, allergens())
ORANGE = Material(
    "orange-oil", "Orange oil", MaterialKind.OIL, HowObtained.EXPRESSED, allergens="none"
)
SUGAR = Material("sugar", "Sugar", MaterialKind.SUGAR, allergens="none")
SPIRIT = Material("spirit", "Spirit", MaterialKind.ETHANOL, allergens="none")
WATER = Material("water", "Water", MaterialKind.WATER)
CARBONATE = Material("carbonate", "Magnesium carbonate", MaterialKind.CLARIFIER, allergens="none")
BENZOATE = Material(
    "benzoate",
    "Benzoate",
    MaterialKind.PRESERVATIVE,
    ingredient_name="sodium benzoate",
    additive="preservative E 211",
    allergens="none",
)
ORGEAT = Material(
    "orgeat",
    "Almond milk",
    MaterialKind.OTHER,
    allergens="almond",
    ingredient_name="almond extract",
)
USED = (ORANGE, SUGAR, SPIRIT, WATER, CARBONATE, BENZOATE)
SYRUP = Contents(
    1e6,
    ethanol_mg=20_000,
    water_mg=450_000,
    sucrose_mg=800_000,
    parts={
        PartKey(OIL, "orange-oil"): Part(1_500, 1_800),
        PartKey(REST, "benzoate"): Part(900, 0.0),
    },
)


def _names(law: Law, *more: Material) -> list[str]:
    return [item.name for item in listed(SYRUP, (*USED, *more), {}, law).ingredients]


def test_a_syrup_is_listed_by_mass_as_its_place_wants() -> None:
    """Regulation (EU) 1169/2011, Article 18(1); 21 CFR 101.4(a)(1) and 101.22(j)."""
    assert _names(EU) == ["sugar", "water", "alcohol", "natural flavouring", "preservative (E 211)"]
    assert _names(US) == [
        "sugar",
        "water",
        "alcohol",
        "natural flavor",
        "sodium benzoate (preservative)",
    ]


def test_what_is_filtered_off_again_is_left_out_and_said_so() -> None:
    """Regulation (EU) 1169/2011, Article 20(b), from memory: processing aids."""
    found = listed(SYRUP, USED, {}, EU)
    assert found.left_out == ("carbonate",)
    assert found.gaps == ()


def test_an_allergen_is_told_with_its_ingredient() -> None:
    there = Contents(1e6, parts={PartKey(REST, "orgeat"): Part(100.0, 0.0)})
    for law, name in ((EU, "nuts"), (US, "tree nuts")):
        found = listed(there, [ORGEAT], {}, law)
        assert [(item.name, item.allergens) for item in found.ingredients] == [
            ("almond extract", (name,))
        ]
        assert found.allergens == (name,)


def test_an_oil_of_which_no_mass_is_known_stands_on_the_list_all_the_same() -> None:
    there = Contents(1e6, sucrose_mg=500_000, unknown_ul={"OO-001-X": 2_000.0})
    found = listed(there, [SUGAR, ORANGE], {"OO-001-X": ORANGE}, EU)
    assert [item.name for item in found.ingredients] == ["sugar", "natural flavouring"]


@pytest.mark.parametrize(
    ("ways", "eu", "us"),
    [
        (("expressed",), "natural flavouring", "natural flavor"),
        (("expressed", None), "flavouring", "flavor"),
        (("synthetic",), "flavouring", "artificial flavor"),
        (("distilled", "synthetic"), "flavouring", "natural and artificial flavors"),
    ],
)
def test_the_word_natural_is_for_what_was_obtained_by_nature(
    ways: tuple[str | None, ...], eu: str, us: str
) -> None:
    """Regulation (EC) 1334/2008, Article 16; 21 CFR 101.22(a)(3) and (h)(1)."""
    oils = [Material("x", "X", MaterialKind.OIL, HowObtained(way) if way else None) for way in ways]
    assert (flavouring_name(oils, Place.EU), flavouring_name(oils, Place.US)) == (eu, us)


@pytest.mark.parametrize(
    ("name", "called"),
    [("Quinine sulphate", "flavouring (quinine)"), ("Caffeine", "flavouring (caffeine)")],
)
def test_quinine_and_caffeine_are_named_right_after_the_word_flavouring(
    name: str, called: str
) -> None:
    """Regulation (EU) 1169/2011, Annex VII, part D, 2 (label_law.csv)."""
    material = Material("bitter", name, MaterialKind.OTHER)
    assert additive_name(material, Place.EU) == called
    assert additive_name(material, Place.US) == name.lower()


def test_an_additive_without_its_number_goes_by_its_name() -> None:
    acid = Material("acid", "Citric acid", MaterialKind.ACID, additive="acid")
    assert (additive_name(acid, Place.EU), additive_number(acid)) == ("acid (citric acid)", None)
    caramel = Material("c", "Caramel", MaterialKind.COLOUR, additive="colour E150d")
    assert additive_name(caramel, Place.UK) == "colour (E 150d)"


def test_what_is_not_recorded_of_a_material_is_named() -> None:
    bare = [
        Material("acid", "Citric acid", MaterialKind.ACID, allergens="none"),
        Material("bark", "Bark", MaterialKind.OTHER),
    ]
    found = listed(Contents(1e6), bare, {}, EU)
    assert [(gap.material, gap.what, gap.option) for gap in found.gaps] == [
        (
            "acid",
            "The class and number of the additive Citric acid are not recorded.",
            '--additive "CLASS AND NUMBER"',
        ),
        (
            "bark",
            "Whether Bark carries allergens is not recorded.",
            '--allergens "NONE OR WHICH"',
        ),
        (
            "bark",
            "What a list of ingredients calls Bark is not recorded.",
            '--ingredient-name "NAME"',
        ),
    ]


def test_a_clarifier_that_comes_of_an_allergen_is_named_although_it_is_filtered_off() -> None:
    """Regulation (EU) No 1169/2011, Annex II counts processing aids too (from memory)."""
    egg = Material("egg", "Egg white", MaterialKind.CLARIFIER, allergens="egg")
    chalk = Material("chalk", "Chalk", MaterialKind.CLARIFIER)
    found = listed(Contents(1e6, 1e5), [egg, chalk], {}, EU)
    last = found.ingredients[-1]
    assert (last.name, last.allergens, last.mass_mg) == ("egg white", ("eggs",), 0.0)
    assert found.left_out == ("chalk",)


@given(st.lists(st.floats(0.1, 1e6), min_size=3, max_size=3))
def test_masses_never_rise_down_the_list(masses: list[float]) -> None:
    ethanol, water, sugar = masses
    there = Contents(1e6, ethanol, water, sugar, parts={PartKey(OIL, "orange-oil"): Part(5.0, 6.0)})
    found = [item.mass_mg for item in listed(there, USED, {}, EU).ingredients]
    assert found == sorted(found, reverse=True)
    assert sum(found) == pytest.approx(there.mass_mg)


def test_of_what_nothing_is_there_nothing_is_listed() -> None:
    none = {PartKey(REST, "benzoate"): Part(0.0, 0.0)}
    without = Contents(1e6, water_mg=450_000, sucrose_mg=800_000, parts=none)
    names = [item.name for item in listed(without, USED, {}, EU).ingredients]
    assert names == ["sugar", "water"]


def test_the_least_drop_has_the_list_of_the_litre() -> None:
    drop = listed(scaled(SYRUP, 1e-7), USED, {}, EU).ingredients
    assert [item.name for item in drop] == _names(EU)
