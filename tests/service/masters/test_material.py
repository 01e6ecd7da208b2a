"""Materials: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError, RefusedError
from tests.keeper import Keeper
from tests.service.cases import Refused, Said, check_recorded, check_refused
from tests.service.masters.said_anew import check_each_alone
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
    "a material with what is known of it": (
        "material",
        {
            "code": "Clove-Oil",
            "name": "Clove oil",
            "kind": "oil",
            "obtained": "distilled",
            "density": "1.045",
            "density_temp": "20",
            "food_grade": "yes",
            "caution": "Burns the skin.",
            "constituents": "eugenol 82.5%; eugenyl acetate 9%",
        },
        None,
        {
            "code": "clove-oil",
            "name": "Clove oil",
            "sort": "oil",
            "how_obtained": "distilled",
            "density_mg_per_l": 1_045_000,
            "density_temp_mdegc": 20_000,
            "food_grade": "yes",
            "caution": "Burns the skin.",
            "constituents": [
                {"substance": "eugenol", "fraction_ppm": 825_000},
                {"substance": "eugenyl acetate", "fraction_ppm": 90_000},
            ],
        },
    ),
    "a material of which little is known": (
        "material",
        {"code": "gum", "kind": "gum"},
        None,
        {"code": "gum", "name": "gum", "sort": "gum", "food_grade": "unknown"},
    ),
    "a change of a material keeps the rest": (
        "material",
        {"code": "spirit", "density": "0.807", "change": "yes"},
        None,
        {
            "code": "spirit",
            "name": "Neutral spirit",
            "sort": "ethanol",
            "density_mg_per_l": 807_000,
            "abv_mpct": 96_000,
            "food_grade": "unknown",
            "allergens": "none",
        },
    ),
    "a density read in ice water": (
        "material",
        {"code": "spirit", "density": "0.83", "density_temp": "0", "change": "yes"},
        None,
        {
            "code": "spirit",
            "name": "Neutral spirit",
            "sort": "ethanol",
            "density_mg_per_l": 830_000,
            "density_temp_mdegc": 0,
            "abv_mpct": 96_000,
            "food_grade": "unknown",
            "allergens": "none",
        },
    ),
}


REFUSED: dict[str, Refused] = {
    "a material known already": (
        "material",
        {"code": "spirit", "kind": "ethanol"},
        RefusedError,
        (
            (
                "The material spirit is in the book already.",
                "Say what is new about it with: pottle material change spirit ...",
            ),
        ),
    ),
    "a change of a material that is not there": (
        "material",
        {"code": "tonic", "change": "yes"},
        RefusedError,
        (
            (
                "The material tonic is not in the book.",
                "Add it with: pottle material add tonic",
            ),
            (
                "The kind of material is missing.",
                "Choose one of: oil, ethanol, clarifier, sugar, water, acid, preservative, gum, "
                "colour, bottle, closure, label, filter, other.",
            ),
        ),
    ),
    "a material with a name no one can type": (
        "material",
        {"code": "orange oil!", "kind": "oil"},
        InputError,
        (
            (
                '"orange oil!" cannot be the short name of a material.',
                "Use at most 30 letters a-z, digits and dashes, such as orange-oil.",
            ),
        ),
    ),
    "a strength above all": (
        "material",
        {"code": "proof", "kind": "ethanol", "abv": "151"},
        RefusedError,
        (
            (
                "A strength of 151 % cannot be: it lies between 0 and 100 % by volume.",
                "Read the label again; US proof is twice the per cent.",
            ),
        ),
    ),
    "allergens that are none and more": (
        "material",
        {"code": "clove-oil", "kind": "oil", "allergens": "NONE OR WHICH"},
        InputError,
        (
            (
                '"NONE OR WHICH" does not say whether there are allergens.',
                'Say "none", or name them: "milk, soya".',
            ),
        ),
    ),
    "a constituent without its share": (
        "material",
        {"code": "clove-oil", "kind": "oil", "constituents": "eugenol"},
        InputError,
        (
            (
                '"eugenol" is not a constituent with its share.',
                "Write each as NAME SHARE%, with ; between them.",
            ),
        ),
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def named(language: str, name: str) -> dict[str, str]:
    return {"language": language, "name": name}


def test_a_fact_of_a_material_that_is_said_anew_alone_keeps_the_rest(bench: Keeper) -> None:
    """Nought says nothing of a density or a strength, and something of a temperature."""
    bench.do("material", code="clove-oil", kind="other")
    check_each_alone(
        bench,
        "material",
        {"code": "Clove-OIL", "change": True},
        {
            "name": "Clove oil",
            "kind": "oil",
            "obtained": "distilled",
            "density": "1.045",
            "density_temp": "20",
            "abv": "1",
            "food_grade": "yes",
            "allergens": "none",
            "ingredient_name": "clove",
            "caution": "Burns.",
            "constituents": "eugenol 80%",
            "additive": "acid E 330",
            "nutrition": "carbohydrate 9; sugars 7",
            "names": "de=Nelke",
        },
        [
            ("name", "Oil of cloves", {"name": "Oil of cloves"}),
            ("kind", "other", {"sort": "other"}),
            ("obtained", "extracted", {"how_obtained": "extracted"}),
            ("density", "1.05 g/mL", {"density_mg_per_l": 1_050_000}),
            ("density_temp", "0 °C", {"density_temp_mdegc": 0}),
            ("abv", "100 %", {"abv_mpct": 100_000}),
            ("food_grade", "no", {"food_grade": "no"}),
            ("allergens", "milk", {"allergens": "milk"}),
            ("ingredient_name", "cloves", {"ingredient_name": "cloves"}),
            ("caution", "Burns the skin.", {"caution": "Burns the skin."}),
            (
                "constituents",
                "eugenol 81%",
                {"constituents": [{"substance": "eugenol", "fraction_ppm": 810_000}]},
            ),
            ("additive", "acid E 331", {"additive": "acid E 331"}),
            ("nutrition", "carbohydrate 9", {"nutrition": "carbohydrate 9"}),
            ("names", "fr=clou", {"names": [named("de", "Nelke"), named("fr", "clou")]}),
        ],
    )


@pytest.mark.parametrize("abv", ["-1", "100.001", "101"])
def test_a_strength_lies_between_nothing_and_all_of_it(abv: str, bench: Keeper) -> None:
    with pytest.raises(RefusedError) as raised:
        bench.do("material", code="spirit", abv=abv, change=True)
    assert raised.value.problems == (
        (
            f"A strength of {abv} % cannot be: it lies between 0 and 100 % by volume.",
            "Read the label again; US proof is twice the per cent.",
        ),
    )


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "material")
