"""Lots that an entry draws on are called by what is in them, with strength or kind."""

import pytest

from ledger.domain.entries import Add, Bottle, Material, Receipt
from ledger.domain.entries.choices import HowObtained
from ledger.domain.lots.state import LotState
from reports.words.entries import named as module
from reports.words.entries.named import called, sentence_naming
from tests.domain.builders import entry, lot, make
from tests.kept.said import check_said


def received(name: str, receipt_abv: int | None = None, **facts: object) -> LotState:
    """Return a lot of a material of some name."""
    opening, material = make(Receipt, abv_mpct=receipt_abv), make(Material, name=name, **facts)
    return lot("GS-001-L", kind="received", opening=opening, material=material)


@pytest.mark.parametrize(
    ("source", "told"),
    [
        (received("Grain spirit", abv_mpct=96_000), "Grain spirit 96 %, GS-001-L"),
        (received("Grain spirit", 95_600, abv_mpct=96_000), "Grain spirit 95.6 %, GS-001-L"),
        (received("Grain spirit 96%", abv_mpct=96_000), "Grain spirit 96%, GS-001-L"),
        (
            received("Orange oil", how_obtained=HowObtained.EXPRESSED),
            "Orange oil (expressed), GS-001-L",
        ),
        (
            received("Cold-Expressed orange oil", how_obtained=HowObtained.EXPRESSED),
            "Cold-Expressed orange oil, GS-001-L",
        ),
        (received("Water"), "Water, GS-001-L"),
        (lot("E-2"), "Orange essence, E-2"),
    ],
)
def test_a_lot_is_called_by_what_tells_it_from_its_neighbour(source: LotState, told: str) -> None:
    assert called(source) == told


def test_every_lot_that_is_known_is_named_and_the_rest_of_the_sentence_stays() -> None:
    oil = received("Orange oil")
    assert sentence_naming(entry(make(Add, source="GS-001-L")), [oil]) == (
        "30 mL of Orange oil, GS-001-L"
    )
    filled = entry(make(Bottle, source="E-2", bottles="GS-001-L"))
    assert sentence_naming(filled, [oil, lot("E-2")]) == (
        "15 x 30 mL from Orange essence, E-2, 450 mL drawn, bottles Orange oil, GS-001-L"
    )
    assert sentence_naming(entry(make(Add, source="O-9")), [oil]) == "30 mL of O-9"


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)
