"""Allergens are found in a material's own facts, by the lists of a place."""

import pytest

from ledger.domain.masters.allergens import Place, allergens_in, place_of
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
    [("DE", Place.EU), ("gb", Place.UK), ("US", Place.US), ("CA", None), (None, None)],
)
def test_a_country_has_the_rules_of_its_place(country: str | None, place: Place | None) -> None:
    assert place_of(country) is place
