"""What so much of a received lot contains, and which fact is missing for it."""

import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Material
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.entries.masters import Constituent
from ledger.science.contents.composition import Contents, Part, PartKey
from ledger.science.contents.received import ReceivedLot, contents_of, holds_alcohol, missing_of
from ledger.science.contents.serving import substances
from tests.science.liquids.liquid_rows import (
    ACID,
    CARBONATE,
    ML,
    SUGAR,
    WATER,
    masses,
    oil,
    some,
    spirit,
    total,
)


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


def bought(
    sort: str = "other",
    abv: float | None = 35.0,
    density: float | None = None,
    measure: Measure = Measure.UL,
) -> ReceivedLot:
    """Return an invented thing that was bought in alcohol, an extract unless told."""
    papers = ("by its papers", density, "by its papers")
    return ReceivedLot(
        "VE-1", "vanilla", "Vanilla essence", MaterialKind(sort), measure, abv, *papers
    )


@pytest.mark.parametrize("density", [None, 960.0, 1020.0, 900.0])
@pytest.mark.parametrize("sort", ["other", "colour", "acid", "gum", "preservative", "water", "oil"])
def test_whatever_has_a_strength_brings_its_alcohol(sort: str, density: float | None) -> None:
    """35 % vol of 100 mL are 35 mL of ethanol at 789.24 kg/m3 (OIML R 22), whatever else is in."""
    found = contents_of(bought(sort, density=density), 100 * ML)
    assert found.ethanol_mg == pytest.approx(35 * 789.24)
    assert found.abv == pytest.approx(35)
    assert found.volume_ul == pytest.approx(100 * ML)
    if density:
        assert found.mass_mg == pytest.approx(100 * density)


def test_an_extract_mixes_with_syrup_as_spirit_of_its_strength_would() -> None:
    water = some(WATER, 900 * ML)
    extract = total(water, some(bought(), 100 * ML))
    assert extract.abv == pytest.approx(total(water, some(spirit(35), 100 * ML)).abv)
    assert extract.notes == {
        "VE-1, Vanilla essence: 35.00 % vol, by its papers; no density known, so it is taken for "
        "spirit of that strength."
    }


def test_what_an_extract_weighs_beyond_its_spirit_is_dissolved_in_it() -> None:
    found = contents_of(bought(density=1020.0), 100 * ML)
    as_spirit = contents_of(spirit(35), 100 * ML)
    assert masses(found)["vanilla"] == pytest.approx(102_000 - as_spirit.mass_mg)
    assert found.water_mg == pytest.approx(as_spirit.water_mg)
    assert found.notes == {
        "VE-1, Vanilla essence: 35.00 % vol, by its papers; what it weighs beyond spirit of that "
        "strength is taken to be dissolved in it."
    }
    by_weight = contents_of(bought(density=1020.0, measure=Measure.MG), 102_000)
    assert by_weight.volume_ul == pytest.approx(100 * ML)
    assert by_weight.ethanol_mg == pytest.approx(found.ethanol_mg)


@pytest.mark.parametrize("sort", ["other", "oil"])
def test_constituents_are_a_share_of_the_whole_that_was_bought(sort: str) -> None:
    """0.5 % of 102 g are 0.51 g, the alcohol and the water counted with the rest."""
    told = (Constituent("coumarin", 5000),)
    known = {"vanilla": Material("vanilla", "Vanilla", MaterialKind(sort), constituents=told)}
    liquid = total(some(WATER, 900 * ML), some(bought(sort, density=1020.0), 50 * ML))
    liquid = total(liquid, some(bought(sort, density=1020.0), 50 * ML))
    assert substances(liquid, known)["coumarin"] == pytest.approx(510)


def test_an_oil_in_alcohol_is_oil_but_for_the_alcohol() -> None:
    found = contents_of(bought("oil", 80.0, 810.0), 100 * ML)
    assert found.oils()["vanilla"].mass_mg == pytest.approx(81_000 - 80 * 789.24)
    assert found.oils()["vanilla"].volume_ul == pytest.approx(20 * ML)
    assert found.water_mg == 0


def test_a_sugar_in_alcohol_is_sugar_but_for_the_alcohol() -> None:
    found = contents_of(bought("sugar", 20.0, 1200.0), 100 * ML)
    assert found.sucrose_mg == pytest.approx(120_000 - 20 * 789.24)
    assert found.abv == pytest.approx(20)


def test_the_alcohol_of_an_oil_of_unknown_density_is_counted_and_the_rest_named() -> None:
    found = contents_of(bought("oil", 80.0), 100 * ML)
    assert found.abv == pytest.approx(80)
    assert found.unknown_ul == {"VE-1": 20 * ML}
    by_weight = contents_of(bought("oil", 80.0, measure=Measure.MG), 100_000)
    assert (by_weight.ethanol_mg, dict(by_weight.unknown_ul)) == (0, {"VE-1": 0})
    assert masses(by_weight)["vanilla"] == 100_000
    assert {missing_of(bought("oil", 80.0, measure=each)) for each in Measure} == {"density", None}


def test_no_fact_is_missing_of_an_extract_whose_strength_is_known() -> None:
    assert missing_of(bought()) is None
    assert missing_of(bought(abv=None)) == "density"
    assert missing_of(bought(abv=0.0)) == "density"


@pytest.mark.parametrize(
    ("lot", "holds"),
    [
        (spirit(96), True),
        (spirit(None), True),
        (bought(), True),
        (bought(abv=None), False),
        (bought(abv=0.0), False),
        (bought("filter"), False),
        (bought(measure=Measure.UEACH), False),
        (oil(), False),
    ],
)
def test_which_lots_hold_alcohol(lot: ReceivedLot, holds: bool) -> None:
    assert holds_alcohol(lot) is holds


def test_spirit_by_weight_of_which_no_strength_is_known_fills_what_its_density_says() -> None:
    """By hand: 400 g of 800 kg/m³ are half a litre; without a density nobody knows."""
    lot = replace(spirit(None), measure=Measure.MG, density_kg_per_m3=800.0)
    found = contents_of(lot, 400_000)
    assert found == Contents(500_000, unknown_ul={lot.code: 500_000})
    found = contents_of(replace(lot, density_kg_per_m3=None), 400_000)
    assert found == Contents(0.0, unknown_ul={lot.code: 0.0})


def test_a_sugar_by_volume_is_sugar_by_its_density_and_says_so() -> None:
    """By hand: 100 mL at 0.850 g/mL are 85 g."""
    found = contents_of(bought("sugar", None, 850.0), 100 * ML)
    told = frozenset({"VE-1, Vanilla essence: 0.850 g/mL, by its papers."})
    assert found == Contents(sucrose_mg=85_000, notes=told)
    assert contents_of(oil(), ML).notes == {"OI-1, Lemon-oil: 0.853 g/mL, by its papers."}


def test_water_by_weight_fills_what_water_does() -> None:
    """0.9982 g/mL at 20 °C (OIML R 22, Table I)."""
    found = contents_of(replace(WATER, measure=Measure.MG), 998_200)
    assert (found.water_mg, found.notes) == (998_200, frozenset())
    assert found.volume_ul == pytest.approx(1_000_000, rel=1e-5)


@pytest.mark.parametrize("sort", ["oil", "sugar"])
def test_what_is_bought_in_alcohol_without_water_says_its_density_and_its_strength(
    sort: str,
) -> None:
    found = contents_of(bought(sort, 20.0, 1200.0), 100 * ML)
    assert found.notes == {
        "VE-1, Vanilla essence: 1.200 g/mL, by its papers.",
        "VE-1, Vanilla essence: 20.00 % vol, by its papers.",
    }
    assert found.volume_ul == pytest.approx(100 * ML)
    by_weight = contents_of(bought(sort, 20.0, 1200.0, Measure.MG), 120_000)
    assert masses(by_weight) == pytest.approx(masses(found))
