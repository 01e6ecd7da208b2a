"""Nutrition is summed by the factors of the law and agrees with worked examples."""

import re
from typing import Any

import pytest

from ledger.domain.entries import Material
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.entries.masters import Constituent
from ledger.science.contents.composition import OIL, REST, Contents, Part, PartKey
from ledger.science.contents.nutrition import (
    KCAL_PER_G,
    KJ_PER_G,
    Nutrition,
    held_by,
    nutrition,
    times,
)
from tests.science.published import rows

TOLD = rows("nutrition.csv")
CALLED = {
    "carbohydrate (not polyols)": "carbohydrate",
    "alcohol (ethanol)": "alcohol",
    "organic acid": "organic-acid",
}
# Substances of their own that no material here is counted as.
NOT_KEPT = {"salatrim", "erythritol"}


@pytest.mark.parametrize(
    "row", [row for row in TOLD if row["quantity"] == "energy factor"], ids=lambda row: str(row)
)
def test_every_factor_is_that_of_annex_xiv(row: dict[str, str]) -> None:
    """Regulation (EU) 1169/2011, Annex XIV."""
    name = CALLED.get(row["conditions"], row["conditions"])
    factors = KJ_PER_G if row["unit"] == "kJ/g" else KCAL_PER_G
    assert name in NOT_KEPT or factors[name] == float(row["value"])


def _published(example: str, unit: str) -> list[float]:
    (row,) = (
        row for row in TOLD if row["quantity"].startswith(example) and row["unit"].startswith(unit)
    )
    return [float(number) for number in re.findall(r"[0-9.]+", row["value"])]


def test_a_drink_of_12_percent_has_the_energy_of_a_published_example() -> None:
    """A published e-label energy example: 100 mL of 12 % vol hold 275 kJ and 66 kcal."""
    told = {
        row["unit"]: float(row["value"])
        for row in TOLD
        if row["conditions"].startswith("100 mL, 12 % vol")
    }
    # The example takes 0.789 g/mL for ethanol.
    of = nutrition(Contents(100_000, ethanol_mg=100_000 * 0.12 * 0.789), {})
    assert (round(of.kj), round(of.kcal)) == (told["kJ"], told["kcal"])


@pytest.mark.parametrize(
    ("example", "g_per_litre"),
    [("worked example 9", 100), ("worked example 10", 850), ("worked example 11", 106.4)],
)
def test_sugar_in_water_has_the_energy_of_the_worked_examples(
    example: str, g_per_litre: float
) -> None:
    """Regulation (EU) 1169/2011, Annex XIV, with the pour 1 + 7 of `syrups.csv`."""
    of = nutrition(Contents(1e6, sucrose_mg=1000 * g_per_litre), {})
    assert [round(of.kj), round(of.kcal)] == _published(example, "kJ")


def _material(sort: MaterialKind, **told: object) -> Material:
    return Material(code="it", name="It", sort=sort, **told)  # type: ignore[arg-type]


def _with(material: Material, mass_mg: float, sort: str = REST) -> Nutrition:
    part = {PartKey(sort, "it"): Part(mass_mg, 0.0)}
    return nutrition(Contents(1e6, parts=part), {"it": material})


def test_an_acid_brings_the_energy_of_an_organic_acid_and_phosphoric_acid_none() -> None:
    """10 g of citric acid in a litre: 13 kJ/g."""
    assert _with(_material(MaterialKind.ACID), 10_000).kj == pytest.approx(13)
    phosphoric = Material(code="it", name="Phosphoric acid", sort=MaterialKind.ACID)
    assert _with(phosphoric, 10_000) == Nutrition()


def test_sodium_benzoate_brings_its_sodium_as_salt() -> None:
    """Molar masses: 22.990 of 144.105 g/mol is sodium, and salt is 2.5 times it."""
    benzoate = _material(
        MaterialKind.PRESERVATIVE, constituents=(Constituent("sodium benzoate", 1_000_000),)
    )
    assert _with(benzoate, 1000).salt == pytest.approx(0.1 * 22.990 / 144.105 * 2.5, rel=1e-4)


def test_what_nothing_is_known_of_is_named_and_counts_as_nothing() -> None:
    """A colour without its nutrition; a lot of which a fact is missing."""
    assert _with(_material(MaterialKind.COLOUR), 1000) == Nutrition(unknown=("it",))
    assert nutrition(Contents(1e6, unknown_ul={"SX-001-X": 1.0}), {}).unknown == ("SX-001-X",)


def test_nutrition_that_is_told_counts_before_what_is_usual() -> None:
    """100 g of a juice concentrate in a litre, with 65 % carbohydrate of which 62 % sugars."""
    juice = _material(MaterialKind.OTHER, nutrition="carbohydrate 65; sugars 62")
    of = _with(juice, 100_000)
    assert [of.carbohydrate, of.sugars] == pytest.approx([6.5, 6.2])


def test_an_oil_and_water_bring_nothing_and_a_gum_is_fibre() -> None:
    """An essential oil is no fat; 8 kJ/g for fibre."""
    assert _with(_material(MaterialKind.OIL), 1000, OIL) == Nutrition()
    assert _with(_material(MaterialKind.GUM), 10_000).kj == pytest.approx(8)


def test_polyols_count_by_their_own_factor() -> None:
    """7 g/L of polyols in 100 mL: 7 kJ and 2 kcal (nutrition.csv)."""
    of = _with(_material(MaterialKind.OTHER, nutrition="carbohydrate 100; polyols 100"), 7000)
    assert (round(of.kj), round(of.kcal)) == (7, 2)


def test_nothing_has_no_nutrition() -> None:
    """An empty lot divides nothing by nothing."""
    assert nutrition(Contents(), {}) == Nutrition()


@pytest.mark.parametrize("sort", [MaterialKind.WATER, MaterialKind.CLARIFIER])
def test_water_and_what_clears_a_liquid_bring_nothing(sort: MaterialKind) -> None:
    assert _with(_material(sort), 1000) == Nutrition()


def test_a_preservative_brings_the_acid_of_its_salts_by_their_shares() -> None:
    """Half of it sodium benzoate, of which 122.12 of 144.105 g/mol is acid, a fifth sorbic acid.

    13 kJ and 3 kcal a gram of organic acid; potassium is no sodium.
    """
    told = (Constituent("sodium benzoate", 500_000), Constituent("sorbic acid", 200_000))
    of = _with(_material(MaterialKind.PRESERVATIVE, constituents=told), 10_000)
    acid = 0.5 * 122.12 / 144.105 + 0.2
    assert of.organic_acid == pytest.approx(acid, rel=1e-4)
    assert (of.kj, of.kcal) == pytest.approx((13 * acid, 3 * acid), rel=1e-4)
    assert of.sodium == pytest.approx(0.5 * 22.990 / 144.105, rel=1e-4)
    potassium = (Constituent("potassium sorbate", 1_000_000),)
    of = _with(_material(MaterialKind.PRESERVATIVE, constituents=potassium), 10_000)
    assert (of.sodium, of.unknown) == (0.0, ())
    assert of.organic_acid == pytest.approx(112.13 / 150.22, rel=1e-4)
    nothing = _material(MaterialKind.PRESERVATIVE, constituents=(Constituent("nisin", 25_000),))
    assert _with(nothing, 10_000) == Nutrition(unknown=("it",))


def test_so_many_times_as_much_has_so_much_of_everything() -> None:
    one = Nutrition(1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, unknown=("it",))
    twice = Nutrition(2.0, 4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0, unknown=("it",))
    assert times(one, 2.0) == twice


@pytest.mark.parametrize(
    ("told", "is_organic"),
    [
        ({}, True),
        ({"name": "Phosphoric acid 75 %"}, False),
        ({"code": "phosphoric"}, False),
        ({"ingredient_name": "acid (Phosphoric acid)"}, False),
    ],
)
def test_an_acid_is_known_for_phosphoric_by_any_of_its_names(
    told: dict[str, Any], *, is_organic: bool
) -> None:
    cells: dict[str, Any] = {"code": "acid", "name": "Acid", "sort": MaterialKind.ACID}
    acid = Material(**(cells | told))
    assert held_by(acid) == ({"organic-acid": 1.0} if is_organic else {})


def test_what_of_a_preservative_is_known_by_its_acid_alone_counts_as_that_acid() -> None:
    for name in ("benzoic acid", "sorbic acid"):
        told = (Constituent("nisin", 25_000), Constituent(name, 990_000))
        alone = held_by(_material(MaterialKind.PRESERVATIVE, constituents=told))
        assert alone == {"sodium": 0.0, "organic-acid": 0.99}


def test_what_nothing_is_known_of_is_named_once_and_what_stands_behind_it_counts() -> None:
    """A lot, a colour, a material that is not in the book; of 100 g of syrup 60 g are sugars."""
    parts = {
        PartKey(REST, "gone"): Part(1000.0, 0.0),
        PartKey(REST, "colour"): Part(1000.0, 0.0),
        PartKey(OIL, "colour"): Part(1000.0, 0.0),
        PartKey(REST, "syrup"): Part(60_000.0, 0.0, dissolved_in_mg=40_000.0),
        PartKey(REST, "gum"): Part(5000.0, 0.0, dissolved_in_mg=5000.0),
    }
    told = {
        "colour": _material(MaterialKind.COLOUR),
        "syrup": _material(MaterialKind.OTHER, nutrition="carbohydrate 60; sugars 50"),
        "gum": _material(MaterialKind.GUM),
    }
    held = Contents(500_000.0, sucrose_mg=1000.0, parts=parts, unknown_ul={"SX-001-X": 1.0})
    of = nutrition(held, told)
    assert of.unknown == ("SX-001-X", "colour", "gone")
    assert [of.carbohydrate, of.sugars, of.fibre] == pytest.approx([12.2, 10.2, 1.0])


def test_nothing_of_nothing_is_known_of_what_is_in_no_book() -> None:
    assert held_by(None) is None
    assert held_by(_material(MaterialKind.COLOUR)) is None
    assert held_by(_material(MaterialKind.OIL, nutrition="fat 100")) == {"fat": 1.0}
