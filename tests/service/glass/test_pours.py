"""Ways to pour a lot: a syrup as it is, an essence dosed into a syrup first."""

from ledger.science.contents.composition import Contents
from ledger.service.account.contents import contents_on
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
