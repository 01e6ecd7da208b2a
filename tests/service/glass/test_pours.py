"""Ways to pour a lot: a syrup as it is, an essence dosed into a syrup first."""

import pytest

from ledger.domain.entries import Material
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.entries.masters import Constituent
from ledger.science.contents.composition import OIL, REST, Contents, Part, PartKey
from ledger.service.account.contents import contents_on
from ledger.service.account.shipped import shipped
from ledger.service.glass.doses import USUAL
from ledger.service.glass.pours import HeldAgainst, pourings, ways
from tests.keeper import Keeper
from tests.path import Lots


def contents_of(keeper: Keeper, code: str) -> Contents:
    with keeper.reading() as connection:
        return contents_on(connection, code).contents


def test_a_syrup_is_poured_as_it_is_and_an_essence_dosed_by_litre_and_by_gallon(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    essence = contents_of(keeper, lots.essence)
    assert [said for said, _ in ways(essence, None)] == ["as it is"]
    assert [said for said, _ in ways(essence, USUAL)] == ["30 mL in 1 L", "30 mL in 1 US gal"]
    litre, gallon = (syrup for _, syrup in ways(essence, USUAL))
    assert litre.abv > gallon.abv > 0


def test_a_glass_has_the_share_of_the_syrup_that_is_poured(walked: tuple[Keeper, Lots]) -> None:
    """One part of eight of 240 mL is 30 mL."""
    keeper, lots = walked
    syrup = contents_of(keeper, lots.syrup)
    (found,) = pourings(syrup, ways(syrup, None), 240_000, 7, HeldAgainst({}, (), ()))
    assert (found.glass.syrup_ul, found.glass.soda_ul) == (30_000, 210_000)
    (oil,) = found.oils
    assert (oil.material, oil.name) == ("orange-oil", "orange-oil")
    assert found.together is None
    assert found.markers == ()


TWO_OILS = Contents(
    1_000_000.0,
    water_mg=500_000.0,
    sucrose_mg=600_000.0,
    parts={
        PartKey(OIL, "lemon-oil"): Part(100.0, 118.0),
        PartKey(REST, "acid"): Part(9_000.0, 5_000.0),
        PartKey(OIL, "orange-oil"): Part(300.0, 355.0),
    },
)


def test_the_oils_of_a_glass_are_told_most_first_with_their_share_of_the_drink() -> None:
    """By hand: 30 mL of a litre with 300 mg are 9 mg, and in 240 mL of drink 37.5 mg/L."""
    known = {"orange-oil": Material("orange-oil", "Sweet orange oil", MaterialKind.OIL)}
    against = HeldAgainst(known, (), ())
    (found,) = pourings(TWO_OILS, ways(TWO_OILS, None), 240_000, 7, against)
    told = [(oil.material, oil.name, oil.mg_per_glass, oil.mg_per_litre) for oil in found.oils]
    assert told == [
        ("orange-oil", "Sweet orange oil", 9.0, 37.5),
        ("lemon-oil", "lemon-oil", 3.0, 12.5),
    ]
    assert found.together is not None
    assert (found.said, found.syrup_abv, found.concerns) == ("as it is", 0.0, ())


def test_a_dose_that_is_measured_off_brings_more_by_that() -> None:
    usual, off = (ways(TWO_OILS, USUAL, factor)[0][1].oils() for factor in (1.0, 1.5))
    assert off["orange-oil"].mass_mg == pytest.approx(1.5 * usual["orange-oil"].mass_mg)
    assert usual["orange-oil"].mass_mg == pytest.approx(9.0)


def test_a_limit_beside_another_substance_counts_only_where_that_one_is_there() -> None:
    """Sorbates have a lower limit where benzoates are in the drink too."""
    limits = {item.code: item for item in shipped()}
    both = (limits["eu-sorbate-with-benzoate"], limits["eu-sorbate"])

    def held(*substances: str) -> list[str]:
        materials = {
            f"m-{number}": Material(
                f"m-{number}",
                name,
                MaterialKind.PRESERVATIVE,
                constituents=(Constituent(name, 1_000_000),),
            )
            for number, name in enumerate(substances)
        }
        parts = {PartKey(REST, code): Part(100.0, 50.0) for code in materials}
        lot = Contents(1_000_000.0, water_mg=990_000.0, parts=parts)
        (way,) = pourings(lot, ways(lot, None), 240_000, 7, HeldAgainst(materials, both, ()))
        return [item.limit.code for served in way.concerns for item in served.limits]

    assert held("sorbic acid") == ["eu-sorbate"]
    assert held("sorbic acid", "benzoic acid") == ["eu-sorbate-with-benzoate", "eu-sorbate"]
    assert held("benzoic acid") == []


def test_a_limit_of_what_is_added_counts_only_the_materials_that_it_means() -> None:
    """Tonka brings added coumarin, cassia has it by nature: 1 g of 3 g counts in 1.002 kg."""
    limits = {item.code: item for item in shipped()}
    known = {
        code: Material(
            code, name, MaterialKind.OIL, constituents=(Constituent("coumarin", 1_000_000),)
        )
        for code, name in (("cassia", "Cassia oil"), ("tonka", "Tonka extract"))
    }
    parts = {PartKey(OIL, "cassia"): Part(2_000.0, 2.0), PartKey(OIL, "tonka"): Part(1_000.0, 1.0)}
    lot = Contents(1_000_000.0, water_mg=999_000.0, parts=parts)
    against = HeldAgainst(known, (limits["us-coumarin"],), ())
    (way,) = pourings(lot, ways(lot, None), 240_000, 7, against)
    (served,) = way.concerns
    (item,) = served.limits
    assert served.concern.mg_per_glass == pytest.approx(90)
    assert item.figure == pytest.approx(1_000 / 1.002)
