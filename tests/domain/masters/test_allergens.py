"""Allergens are found in a material's own facts, by the lists of a place."""

import pytest

from ledger.domain.masters.allergens import (
    NONE_TOLD,
    Place,
    allergens_in,
    named_in,
    place_of,
    read_allergens,
)
from ledger.errors import InputError
from ledger.service.account.label_law import allergens
from tests.science.published import rows

LAW = {row["quantity"]: row for row in rows("label_law.csv")}


@pytest.mark.parametrize(
    ("place", "row", "same"),
    [(Place.US, "US major allergens", {"soybeans": "soybeans"}), (Place.EU, "UK/EU allergens", {})],
)
def test_every_allergen_of_the_law_is_found_by_its_own_word(
    place: Place, row: str, same: dict[str, str]
) -> None:
    """FD&C Act 201(qq) with the FASTER Act; Regulation (EU) 1169/2011, Annex II."""
    names = [name.split(" >")[0].strip() for name in LAW[row]["conditions"].split(",")]
    assert len(names) == int(LAW[row]["value"])
    found = {allergen for name in names for allergen in allergens_in(name, allergens(), place)}
    counted = {item.name for item in allergens() if place in item.places}
    # Wheat is one of the cereals with gluten and named by its own name besides.
    assert counted - found <= {"wheat (cereals containing gluten)"}
    assert len(found) == len(names)


def test_whole_words_count_and_nutmeg_is_no_nut() -> None:
    assert allergens_in("nutmeg", allergens(), Place.EU) == ("nutmeg",)
    assert allergens_in("almond, milk", allergens(), Place.US) == ("tree nuts", "milk")
    assert allergens_in("almond", allergens(), Place.EU) == ("nuts",)


@pytest.mark.parametrize("text", [None, "none", "None known", "-"])
def test_none_is_none(text: str | None) -> None:
    assert allergens_in(text, allergens(), Place.EU) == ()


@pytest.mark.parametrize(
    ("country", "place"),
    [
        *(("DE", Place.EU), (" eu ", Place.EU), ("gb", Place.UK), ("UK", Place.UK)),
        *(("US", Place.US), ("CA", None), ("", None), (None, None)),
    ],
)
def test_a_country_has_the_rules_of_its_place(country: str | None, place: Place | None) -> None:
    assert place_of(country) is place


def test_several_are_told_apart_by_commas_semicolons_and_lines_each_once() -> None:
    text = "Milk; almond,\nhazelnut; , Cream of tartar"
    assert allergens_in(text, allergens(), Place.EU) == ("milk", "nuts", "cream of tartar")


def test_an_allergen_of_another_place_is_told_as_it_is_written() -> None:
    assert allergens_in("Celery", allergens(), Place.US) == ("celery",)
    assert named_in("Syrup of celery, with MILK", allergens(), Place.US) == ("milk",)
    assert named_in("Syrup of celery, with MILK", allergens(), Place.EU) == ("milk", "celery")
    assert named_in("Syrup of nutmeg", allergens(), Place.EU) == ()


@pytest.mark.parametrize("text", [*sorted(NONE_TOLD), " None ", "milk, soya", "nonesuch", "novel"])
def test_none_or_which_is_kept_as_it_is_told(text: str) -> None:
    assert read_allergens(text) == text


@pytest.mark.parametrize("text", ["none, but milk", "No nuts", " none? "])
def test_none_and_something_else_is_refused(text: str) -> None:
    with pytest.raises(InputError) as raised:
        read_allergens(text)
    assert raised.value.problems == (
        (
            f'"{text.strip()}" does not say whether there are allergens.',
            'Say "none", or name them: "milk, soya".',
        ),
    )
