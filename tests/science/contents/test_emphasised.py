"""An ingredient that a product is named after is listed with its share of the lot's mass."""

import pytest

from ledger.domain.entries import Material
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.masters.allergens import Place
from ledger.science.contents.composition import REST, Contents, Part, PartKey
from ledger.science.contents.emphasised import with_quantities
from ledger.science.contents.ingredients import Law, listed
from ledger.service.account.label_law import allergens

JUICE = Material("juice", "Lemon juice", MaterialKind.OTHER, allergens="none")
SUGAR = Material("sugar", "Sugar", MaterialKind.SUGAR, allergens="none")
ACID = Material("acid", "Lemon acid", MaterialKind.ACID, allergens="none", additive="acid E 330")
USED = {item.code: item for item in (JUICE, SUGAR, ACID)}
SYRUP = Contents(
    1e6,
    water_mg=395_000,
    sucrose_mg=600_000,
    parts={
        PartKey(REST, "juice"): Part(250_000, 240_000),
        PartKey(REST, "acid"): Part(5_000, 0.0),
    },
)


def _told(product: str, contents: Contents = SYRUP, place: Place = Place.EU) -> dict[str, float]:
    found = listed(contents, USED.values(), {}, Law(place, allergens()))
    told = with_quantities(found, product, USED, contents).ingredients
    return {item.name: item.percent for item in told if item.percent is not None}


def test_a_juice_that_the_name_emphasises_has_its_share_and_nothing_else_has() -> None:
    """Regulation (EU) 1169/2011, Article 22(1)(a), Annex VIII, 3: 250 g of 1250 g are 20 %."""
    assert _told("Lemon syrup") == {"lemon juice": pytest.approx(20.0)}


@pytest.mark.parametrize("product", ["Sugar syrup", "Fruit juice syrup", "Acid phosphate"])
def test_what_the_name_does_not_emphasise_has_none(product: str) -> None:
    assert _told(product) == {}


def test_none_is_told_where_the_law_asks_for_none_or_its_own_mass_is_unknown() -> None:
    assert _told("Lemon syrup", place=Place.US) == {}
    tincture = {PartKey(REST, "juice"): Part(1_000, 0.0, dissolved_in_mg=9_000)}
    assert _told("Lemon syrup", Contents(1e6, 4_000, 5_000, parts=tincture)) == {}
    unknown = Contents(1e6, parts=SYRUP.parts, unknown_ul={"X-001": 5_000.0})
    assert _told("Lemon syrup", unknown) == {}
