"""A list of ingredients in the language of a market, and what has no name in it."""

import pytest

from ledger.domain.entries import Material
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.entries.masters import NameIn
from ledger.domain.masters.allergens import Place
from ledger.science.contents.ingredients import Ingredient, Listed
from reports.words.glass.declaration import ingredients_text
from reports.words.goods import list_words as module
from reports.words.goods.label_words import languages
from reports.words.goods.list_words import in_language
from tests.kept.said import check_constants, check_said

SUGAR = Material("cane", "Cane", MaterialKind.SUGAR, names=(NameIn("de", "Rohrzucker"),))
LISTED = Listed(
    Place.EU,
    (
        Ingredient("sugar", 9.0, ("milk",), ("cane",)),
        Ingredient("water", 8.0, (), ("tap",)),
        Ingredient("natural flavouring", 7.0, (), ("lemon", "lime")),
        Ingredient("preservative (E 211)", 6.0, (), ("benzoate",)),
        Ingredient("flavouring (quinine)", 5.0, (), ("quin",)),
        Ingredient("bark", 4.0, (), ("bark",)),
    ),
    (),
    (),
)


@pytest.mark.parametrize(
    ("language", "text", "without"),
    [
        (
            "DE",
            "Zutaten: Rohrzucker (MILK), Wasser, natürliches Aroma, Konservierungsstoff (E 211), "
            "Aroma (Chinin), bark.",
            ("bark",),
        ),
        (
            "fr",
            "Ingrédients: sucre (MILK), eau, arôme naturel, conservateur (E 211), arôme (quinine), "
            "bark.",
            ("bark",),
        ),
        (
            None,
            "Ingredients: sugar (MILK), water, natural flavouring, preservative (E 211), "
            "flavouring (quinine), bark.",
            (),
        ),
    ],
)
def test_a_list_is_in_the_language_as_far_as_the_book_has_names(
    language: str | None, text: str, without: tuple[str, ...]
) -> None:
    """Words of the law are the law's; a material's are the maker's."""
    found = in_language(LISTED, [SUGAR], language)
    head = languages()[(language or "en").lower()].ingredients
    assert ingredients_text(found.listed, head) == text
    assert found.without == without


def test_every_language_has_the_same_words_of_the_law() -> None:
    known = {code: set(words.listed) for code, words in languages().items() if code != "en"}
    assert len(known) == 5
    assert len({frozenset(words) for words in known.values()}) == 1


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module, "card_in_language")


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
