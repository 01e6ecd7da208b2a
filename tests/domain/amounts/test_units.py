"""Units against their legal definitions, and the words that could be two units."""

import csv
from fractions import Fraction
from pathlib import Path
from typing import Any

import pint
import pytest

from ledger.domain.amounts.units import UNITS, Measure, find_unit
from ledger.errors import InputError

REFERENCE = Path(__file__).parents[2] / "reference" / "units.csv"
NAME_IN_REFERENCE = {
    "US fluid ounce": "US fl oz",
    "US gallon (231 in3)": "US gal",
    "US quart": "US qt",
    "US pint": "US pt",
    "imperial gallon": "imp gal",
    "imperial fluid ounce": "imp fl oz",
    "imperial pint": "imp pt",
    "avoirdupois pound": "lb",
    "avoirdupois ounce": "oz av",
}
NOT_KEPT = {
    "US cup",
    "US tablespoon",
    "US teaspoon",
    "US fluid dram",
    "US minim",
    "grain",
    "inch",
    "degF",
}
NAME_IN_PINT = {
    "µL": "microliter",
    "mL": "milliliter",
    "cL": "centiliter",
    "dL": "deciliter",
    "L": "liter",
    "US fl oz": "fluid_ounce",
    "US pt": "pint",
    "US qt": "quart",
    "US gal": "gallon",
    "imp fl oz": "imperial_fluid_ounce",
    "imp pt": "imperial_pint",
    "imp qt": "imperial_quart",
    "imp gal": "imperial_gallon",
    "mg": "milligram",
    "g": "gram",
    "kg": "kilogram",
    "oz av": "ounce",
    "lb": "pound",
}
PINT_MEASURE = {Measure.UL: "microliter", Measure.MG: "milligram"}
KNOWN = (
    "µL, mL, cL, dL, L, US fl oz, US pt, US qt, US gal, imp fl oz, imp pt, imp qt, imp gal, "
    "mg, g, kg, oz av, lb and each"
)


def reference_rows() -> list[dict[str, str]]:
    with REFERENCE.open(newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


@pytest.fixture(scope="module")
def registry() -> Any:
    return pint.UnitRegistry(non_int_type=Fraction)


def test_the_reference_table_is_covered_but_for_units_that_are_not_kept() -> None:
    assert {row["unit"] for row in reference_rows()} == NAME_IN_REFERENCE.keys() | NOT_KEPT


@pytest.mark.parametrize(
    "row",
    [row for row in reference_rows() if row["unit"] in NAME_IN_REFERENCE],
    ids=lambda row: row["unit"],
)
def test_factors_are_the_published_ones(row: dict[str, str]) -> None:
    """Source: column "source" of units.csv (NIST Handbook 44 App. C; UK regulations 1995)."""
    unit = find_unit(NAME_IN_REFERENCE[row["unit"]], piece="")
    assert unit.measure is {"mL": Measure.UL, "g": Measure.MG}[row["si"]]
    assert unit.smallest == Fraction(row["exact_value"]) * 1000


def test_every_unit_but_each_is_compared_with_pint() -> None:
    assert {unit.name for unit in UNITS} == NAME_IN_PINT.keys() | {"each"}


@pytest.mark.parametrize(("name", "theirs"), NAME_IN_PINT.items())
def test_factors_are_those_of_pint(registry: Any, name: str, theirs: str) -> None:
    unit = find_unit(name, piece="")
    converted = registry.Quantity(Fraction(1), theirs).to(PINT_MEASURE[unit.measure])
    assert unit.smallest == converted.magnitude


@pytest.mark.parametrize("unit", UNITS, ids=lambda unit: unit.name)
@pytest.mark.parametrize("change", [str, str.upper, str.lower], ids=["as is", "upper", "lower"])
def test_a_unit_is_found_by_its_name_in_any_case(unit: Any, change: Any) -> None:
    assert find_unit(change(unit.name), piece="") == unit


@pytest.mark.parametrize(
    ("word", "name"),
    [
        ("ml", "mL"),
        ("MLs", "mL"),
        ("millilitres", "mL"),
        ("Liter", "L"),
        ("uL", "µL"),
        ("\u00b5l", "µL"),
        ("\u03bcL", "µL"),
        ("fl. oz.", "US fl oz"),
        ("floz", "US fl oz"),
        ("U.S. fl. oz.", "US fl oz"),
        ("fl oz US", "US fl oz"),
        ("UK fl oz", "imp fl oz"),
        ("imperial gallons", "imp gal"),
        ("gal US", "US gal"),
        ("pt imp", "imp pt"),
        ("qt US", "US qt"),
        ("oz wt", "oz av"),
        ("av oz", "oz av"),
        ("lbs", "lb"),
        ("MG", "mg"),
        ("ea", "each"),
        ("pcs", "each"),
    ],
)
def test_a_unit_is_found_by_other_spellings(word: str, name: str) -> None:
    assert find_unit(word, piece="").name == name


def test_a_bare_fluid_ounce_is_that_of_the_house() -> None:
    assert find_unit("fl oz", piece="", fluid_ounce="US").name == "US fl oz"
    assert find_unit("fl oz", piece="", fluid_ounce="imperial").name == "imp fl oz"


@pytest.mark.parametrize(
    ("before", "word", "name"),
    [
        ("lb", "oz", "oz av"),
        ("US gal", "oz", "US fl oz"),
        ("imp gal", "fl oz", "imp fl oz"),
        ("imp gal", "pt", "imp pt"),
        ("US gal", "quarts", "US qt"),
        ("lb", "fl oz", "US fl oz"),
    ],
)
def test_a_bare_unit_belongs_to_the_system_before_it(before: str, word: str, name: str) -> None:
    first = find_unit(before, piece="")
    assert find_unit(word, piece="", before=first).name == name


@pytest.mark.parametrize(
    ("word", "sentence"),
    [
        ("oz", "2 oz could be a volume or a weight. Write US fl oz, imp fl oz or oz av."),
        (
            "gal",
            "2 gal could be US or imperial, and the imperial is a fifth larger. "
            "Write US gal or imp gal.",
        ),
        (
            "quarts",
            "2 quarts could be US or imperial, and the imperial is a fifth larger. "
            "Write US qt or imp qt.",
        ),
        (
            "Pints",
            "2 Pints could be US or imperial, and the imperial is a fifth larger. "
            "Write US pt or imp pt.",
        ),
        ("gr", "2 gr could be in grams or in grains. Write g or mg."),
        ("Mg", "2 Mg could be in milligrams or in megagrams. Write mg or kg."),
        (
            "drops",
            "2 drops is not an amount the book keeps: drops differ by half between droppers, "
            "from 20 to 40 in a millilitre. Weigh it in mg or g, or measure it in mL.",
        ),
        (
            "mlx",
            f'"mlx" in 2 mlx is not a unit the book knows; it knows {KNOWN}. '
            "Did you mean mL? Write the amount again with one of these.",
        ),
        (
            "galon",
            f'"galon" in 2 galon is not a unit the book knows; it knows {KNOWN}. '
            "Did you mean US gal or imp gal? Write the amount again with one of these.",
        ),
        (
            "fluid ounc",
            f'"fluid ounc" in 2 fluid ounc is not a unit the book knows; it knows {KNOWN}. '
            "Did you mean fl oz? Write the amount again with one of these.",
        ),
        (
            "tsp",
            f'"tsp" in 2 tsp is not a unit the book knows; it knows {KNOWN}. '
            "Write the amount again with one of these.",
        ),
    ],
    ids=lambda value: value if len(value) < 12 else "",
)
def test_a_word_that_is_no_unit_is_refused_with_the_choices(word: str, sentence: str) -> None:
    with pytest.raises(InputError) as caught:
        find_unit(word, piece=f"2 {word}")
    assert str(caught.value) == sentence


def test_a_house_with_another_fluid_ounce_is_refused() -> None:
    with pytest.raises(InputError) as caught:
        find_unit("mL", piece="1 mL", fluid_ounce="metric")
    assert str(caught.value) == (
        'The fluid ounce of the house must be US or imperial, and "metric" is neither. '
        "Choose US or imperial."
    )
