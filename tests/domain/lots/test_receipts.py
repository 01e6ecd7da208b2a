"""What a receipt should say, and does not."""

from datetime import date

import pytest

from ledger.domain.entries import Material, Receipt
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.lots.receipts import missing_facts
from tests.domain.builders import ml

ALWAYS = ("the supplier", "the supplier's lot", "the cost")
KEEPS = ("the best-before date", "the certificate")


@pytest.mark.parametrize(
    ("sort", "wanted"),
    [
        (MaterialKind.OIL, (*ALWAYS, *KEEPS, "the allergens")),
        (MaterialKind.CLARIFIER, (*ALWAYS, *KEEPS)),
        (MaterialKind.ACID, (*ALWAYS, *KEEPS, "the class and number", "the allergens")),
        (MaterialKind.ETHANOL, (*ALWAYS, *KEEPS, "the strength", "the allergens")),
        (MaterialKind.WATER, ALWAYS),
        (MaterialKind.BOTTLE, ALWAYS),
        (MaterialKind.CLOSURE, ALWAYS),
    ],
)
def test_what_is_wanted_depends_on_the_kind_of_material(
    sort: MaterialKind, wanted: tuple[str, ...]
) -> None:
    assert missing_facts(Receipt("x", ml(100)), Material("x", "X", sort)) == wanted


def test_what_was_told_is_not_missing_nor_is_a_strength_that_the_material_has() -> None:
    told = Receipt(
        "spirit",
        ml(100),
        supplier="Pretend Spirit Store",
        supplier_lot="N96",
        cost_minor=0,
        best_before=date(2027, 6, 30),
        certificate="C 1",
    )
    known = Material("spirit", "Spirit", MaterialKind.ETHANOL, abv_mpct=96_000, allergens="none")
    assert missing_facts(told, known) == ()
