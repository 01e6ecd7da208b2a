"""A declaration is rounded as the guidance says and as 21 CFR 101.9 says."""

from collections.abc import Callable

import pytest

from ledger.science.contents.declared import (
    eu_gram,
    eu_lines,
    eu_salt,
    us_calories,
    us_fat,
    us_gram,
    us_lines,
    us_sodium,
)
from ledger.science.contents.nutrition import Nutrition
from tests.science.published import rows

LABELS = {
    row["quantity"] + ": " + row["conditions"]: row["value"]
    for row in rows("nutrition.csv")
    if row["unit"] == "kcal" and row["source"] == "US label values"
}


def test_the_glass_of_the_pour_declares_11_g_of_sugars() -> None:
    """nutrition.csv, worked example 11: 106.4 g/L are declared as 11 g, 181 kJ and 43 kcal."""
    told = {
        line.name: line.amount for line in eu_lines(Nutrition(carbohydrate=10.64, sugars=10.64))
    }
    assert told == {
        "energy": "181 kJ / 43 kcal",
        "fat": "0 g",
        "of which saturates": "0 g",
        "carbohydrate": "11 g",
        "of which sugars": "11 g",
        "protein": "0 g",
        "salt": "0 g",
    }


def test_the_lines_stand_in_the_order_of_annex_xv() -> None:
    """label_law.csv: energy, fat, saturates, carbohydrate, sugars, protein, salt."""
    names = [line.name.replace("of which ", "") for line in eu_lines(Nutrition())]
    told = {row["quantity"]: row["conditions"] for row in rows("label_law.csv")}
    law = told["EU nutrition order"]
    assert names == [
        name.strip().replace("of which ", "").replace("energy (kJ and kcal)", "energy")
        for name in law.split(",")
    ]


@pytest.mark.parametrize(
    ("kcal", "declared"),
    [(0, "0"), (4.99, "0"), (5, "5"), (47.4, "45"), (50, "50"), (54.9, "50"), (55, "60")],
)
def test_calories_are_rounded_by_steps_of_5_and_10(kcal: float, declared: str) -> None:
    """21 CFR 101.9(c)(1)."""
    assert us_calories(kcal) == declared


def test_a_root_beer_of_40_g_of_sugars_declares_the_calories_of_its_label() -> None:
    """nutrition.csv, worked example 8: 12 fl oz with 40 g of sugars and 55 mg sodium: 160."""
    (label,) = (value for name, value in LABELS.items() if name.startswith("worked example 8"))
    of = Nutrition(carbohydrate=40, sugars=40, sodium=0.055)
    told = {line.name: line.amount for line in us_lines(of)}
    assert told["calories"] == label
    assert told["sodium"] == "55 mg"
    assert told["total sugars"] == told["includes added sugars"] == "40 g"


@pytest.mark.parametrize(("gram", "declared"), [(0.1, "<0.1 g"), (0.11, "0.1 g")])
def test_saturates_are_nothing_up_to_a_tenth_of_a_gram(gram: float, declared: str) -> None:
    """The guidance of December 2012, table 4."""
    assert eu_lines(Nutrition(saturates=gram))[2].amount == declared


def test_a_half_is_rounded_up() -> None:
    """0.125 g of salt is 0.13 g, whatever its binary form."""
    assert eu_salt(0.125) == "0.13 g"


def test_sugars_of_the_fruit_itself_are_not_added() -> None:
    """Of 12 g, 3 g are the fruit's own."""
    told = {line.name: line.amount for line in us_lines(Nutrition(sugars=12), added_sugars=9)}
    assert (told["total sugars"], told["includes added sugars"]) == ("12 g", "9 g")


def test_the_lines_stand_in_the_order_of_the_nutrition_facts_and_by_their_names() -> None:
    """As 21 CFR 101.9(c) (1), (2), (4), (6), (7) have them; that this is the order, from memory."""
    assert [line.name for line in us_lines(Nutrition())] == [
        "calories",
        "total fat",
        "sodium",
        "total carbohydrate",
        "total sugars",
        "includes added sugars",
        "protein",
    ]


OF_EVERYTHING = Nutrition(
    fat=1.24,
    saturates=0.3,
    carbohydrate=11.6,
    sugars=7.4,
    polyols=2,
    fibre=3,
    protein=0.9,
    alcohol=4,
    organic_acid=1,
    sodium=0.2,
)


def test_every_line_tells_its_own_nutrient_by_its_own_rule() -> None:
    """397 kJ and 95 kcal by hand; fibre counts in the carbohydrate of the United States."""
    assert [line.amount for line in eu_lines(OF_EVERYTHING)] == [
        *("397 kJ / 95 kcal", "1.2 g", "0.3 g", "12 g", "7.4 g", "0.9 g", "0.50 g"),
    ]
    assert [line.amount for line in us_lines(OF_EVERYTHING)] == [
        *("90", "1.0 g", "200 mg", "15 g", "7 g", "7 g", "less than 1 g"),
    ]
    told = {line.name: line.amount for line in us_lines(OF_EVERYTHING, added_sugars=0.0)}
    assert told["includes added sugars"] == "0 g"


@pytest.mark.parametrize(
    ("rule", "declared"),
    [
        (
            eu_gram,
            {0: "0 g", 0.001: "<0.5 g", 0.5: "<0.5 g", 0.5001: "0.5 g", 9.94: "9.9 g", 10: "10 g",
             10.5: "11 g"},
        ),
        (
            eu_salt,
            {0: "0 g", 0.001: "<0.01 g", 0.0125: "<0.01 g", 0.0126: "0.01 g", 0.994: "0.99 g",
             1: "1.0 g", 1.25: "1.3 g"},
        ),
        (us_gram, {0: "0 g", 0.49: "0 g", 0.5: "less than 1 g", 0.99: "less than 1 g", 1: "1 g",
                   1.5: "2 g"}),
        (us_fat, {0: "0 g", 0.49: "0 g", 0.5: "0.5 g", 4.7: "4.5 g", 4.8: "5.0 g", 5: "5 g",
                  5.5: "6 g"}),
        (us_sodium, {0: "0 mg", 4.9: "0 mg", 5: "5 mg", 137.4: "135 mg", 140: "140 mg",
                     141: "140 mg", 145: "150 mg"}),
    ],
)  # fmt: skip
def test_steps_and_what_may_be_called_nothing_change_where_the_rule_says(
    rule: Callable[[float], str], declared: dict[float, str]
) -> None:
    """The guidance of December 2012, table 4, and 21 CFR 101.9(c) (2), (4) and (6)."""
    assert {amount: rule(amount) for amount in declared} == declared
