"""What so much of a received lot contains, and which fact is missing for it."""

import pytest

from ledger.domain.quantity import Measure
from ledger.science.composition import Contents, Part, PartKey
from ledger.science.received import ReceivedLot, contents_of, missing_of
from tests.science.liquids import ACID, CARBONATE, ML, SUGAR, WATER, oil, spirit


def test_spirit_by_volume_and_by_weight_is_the_same_liquid() -> None:
    """96 % vol is 93.84 % mass and 0.8074 g/mL (OIML R 22, Table I)."""
    litre = contents_of(spirit(96), 1000 * ML)
    assert litre.ethanol_mg / litre.mass_mg == pytest.approx(0.9384, abs=1e-4)
    assert litre.mass_mg / litre.volume_ul == pytest.approx(0.8074, abs=1e-4)
    by_weight = contents_of(spirit(96, Measure.MG), litre.mass_mg)
    assert by_weight.volume_ul == pytest.approx(1000 * ML)
    assert by_weight.ethanol_mg == pytest.approx(litre.ethanol_mg)


def test_an_oil_by_volume_and_by_weight_is_the_same_liquid() -> None:
    by_volume = contents_of(oil(), 30 * ML)
    assert by_volume.parts == {PartKey("oil", "lemon-oil"): Part(25_590, 30 * ML)}
    by_weight = contents_of(oil(measure=Measure.MG), 25_590)
    assert by_weight.oils()["lemon-oil"].volume_ul == pytest.approx(30 * ML)


def test_what_a_filter_keeps_back_brings_nothing() -> None:
    assert contents_of(CARBONATE, 15_000) == Contents()


def test_other_dissolved_things_are_counted_by_mass_and_fill_nothing_unless_known() -> None:
    found = contents_of(ACID, 5000)
    assert found.parts == {PartKey("rest", "citric"): Part(5000, 0.0)}
    assert found.notes == {"AC-1, Citric acid: no density known, so it is taken to fill no volume."}


@pytest.mark.parametrize(
    ("lot", "fact"),
    [
        (spirit(None), "strength"),
        (oil(density=None), "density"),
        (spirit(96), None),
        (oil(), None),
        (oil(density=None, measure=Measure.MG), None),
        (SUGAR, None),
        (WATER, None),
        (CARBONATE, None),
    ],
)
def test_a_missing_fact_is_named_and_never_guessed(lot: ReceivedLot, fact: str | None) -> None:
    assert missing_of(lot) == fact
    if fact:
        assert contents_of(lot, 1000) == Contents(1000, unknown_ul={lot.code: 1000})
