"""Bottles that go into a batch by count bring what was filled into them."""

import pytest

from ledger.service.account.contents import contents_on
from tests.keeper import Keeper
from tests.path import make_essence, receive_all


@pytest.fixture
def dosed(keeper: Keeper) -> tuple[Keeper, str]:
    """A syrup of a litre of water into which one bottle of 30 mL of essence went."""
    lots = receive_all(keeper)
    essence = make_essence(keeper, lots)
    packed = keeper.opens("bottle", source=essence, pack="10 x 30mL", bottles=lots.bottles)
    syrup = keeper.opens("start", product="Orange syrup", kind="syrup", target="1.03L")
    keeper.do("add", lot=syrup, source=lots.water, amount="1L")
    keeper.do("add", lot=syrup, source=packed, amount="1 each")
    return keeper, syrup


def test_a_bottle_dosed_by_count_is_in_the_volume_of_the_batch(dosed: tuple[Keeper, str]) -> None:
    keeper, syrup = dosed
    assert keeper.on_hand(syrup) == keeper.held(syrup) == 1_030_000
    keeper.do("finish", lot=syrup, volume="1.03L")


def test_what_is_on_hand_is_what_was_put_together(dosed: tuple[Keeper, str]) -> None:
    keeper, syrup = dosed
    with keeper.reading() as connection:
        contents = contents_on(connection, syrup).contents
    # Spirit and water shrink when they mix; by 30 mL of strong spirit in a litre some 2 mL.
    assert contents.volume_ul == pytest.approx(1_030_000, abs=3000)
