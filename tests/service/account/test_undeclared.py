"""Facts that a label declares are named by the materials that lack them, and once told no more."""

from ledger.service.account.undeclared import undeclared
from tests.keeper import Keeper
from tests.path import Lots


def test_materials_without_a_fact_are_named_until_it_is_told(walked: tuple[Keeper, Lots]) -> None:
    """Neither the carbonate, which is filtered off, nor the bottles, nor the water."""
    keeper, lots = walked
    with keeper.reading() as connection:
        found = undeclared(connection, lots.packed)
    assert found == ("orange-oil", "spirit", "sugar")
    for code in found:
        keeper.do("material", code=code, change=True, allergens="none")
    with keeper.reading() as connection:
        assert undeclared(connection, lots.packed) == ()


def test_it_is_said_of_a_release_of_bottles_and_stops_it_not(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    what = (
        f"What a label of {lots.packed} declares, such as allergens, is not recorded of "
        "orange-oil, spirit, sugar."
    )
    done = keeper.do("judge", lot=lots.packed, verdict="release")
    assert (what, f"pottle serving {lots.packed} says what to record.") in done.remarks
    in_bulk = keeper.do("judge", lot=lots.essence, verdict="release")
    assert not any("declares" in said for said, _ in in_bulk.remarks)
