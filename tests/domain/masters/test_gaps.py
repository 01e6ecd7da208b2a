"""What a label must tell of a material and the book may not know."""

import pytest

from ledger.domain.entries import Material
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.masters.gaps import Gap, filled_by, gaps_of

ALLERGENS = Gap(
    "x",
    "the allergens",
    "Whether X carries allergens is not recorded.",
    '--allergens "NONE OR WHICH"',
)
CLASS = Gap(
    "x",
    "the class and number",
    "The class and number of the additive X are not recorded.",
    '--additive "CLASS AND NUMBER"',
)
NAME = Gap(
    "x",
    "the name on a list",
    "What a list of ingredients calls X is not recorded.",
    '--ingredient-name "NAME"',
)


@pytest.mark.parametrize(
    ("sort", "wanted"),
    [
        (MaterialKind.OIL, [ALLERGENS]),
        (MaterialKind.PRESERVATIVE, [CLASS, ALLERGENS]),
        (MaterialKind.OTHER, [ALLERGENS, NAME]),
        (MaterialKind.WATER, []),
        (MaterialKind.CLARIFIER, []),
        (MaterialKind.CLOSURE, []),
    ],
)
def test_what_is_asked_depends_on_the_kind_of_material(
    sort: MaterialKind, wanted: list[Gap]
) -> None:
    assert gaps_of(Material("x", "X", sort)) == wanted


def test_what_was_told_is_no_gap() -> None:
    told = Material("x", "X", MaterialKind.GUM, allergens="none", additive="stabiliser E 414")
    assert gaps_of(told) == []


def test_all_gaps_of_a_material_are_filled_by_one_command() -> None:
    gaps = gaps_of(Material("x", "X", MaterialKind.PRESERVATIVE))
    assert filled_by(gaps) == (
        'pottle material change x --additive "CLASS AND NUMBER" --allergens "NONE OR WHICH"'
    )
    other = Material("x", "X", MaterialKind.OTHER, ingredient_name="sugar of maple")
    assert gaps_of(other) == [ALLERGENS]
