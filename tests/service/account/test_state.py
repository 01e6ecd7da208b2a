"""The state of a lot tells the same lot as a list of many does, also after corrections."""

from ledger.domain.lots.lot import Lot
from ledger.domain.lots.state import in_brief, name
from ledger.service.account.state import lot_state
from ledger.service.lots.stock import stock
from tests.keeper import Keeper
from tests.path import receive_all


def listed(keeper: Keeper, code: str) -> Lot:
    return next(lot for lot in stock(keeper.book, everything=True) if lot.code == code)


def alone(keeper: Keeper, code: str) -> Lot:
    with keeper.reading() as connection:
        return in_brief(lot_state(connection, code))


def test_every_lot_of_a_book_with_all_kinds_of_entry_is_told_alike(full: Keeper) -> None:
    for lot in stock(full.book, everything=True):
        assert alone(full, lot.code) == lot


def test_bottles_are_named_after_what_they_were_really_filled_from(keeper: Keeper) -> None:
    lots = receive_all(keeper)
    made = [
        keeper.opens("start", product=product, kind="base-syrup", target="1L")
        for product in ("Plain syrup", "Ginger syrup")
    ]
    for code in made:
        keeper.do("add", lot=code, source=lots.water, amount="1L")
        keeper.do("finish", lot=code, volume="1L")
    filled = keeper.do("bottle", source=made[0], pack="2 x 250mL", bottles=lots.bottles)
    assert filled.code is not None
    assert alone(keeper, filled.code).name == "Plain syrup, 250 mL"
    keeper.do(
        "correct", entry=str(filled.seq), changes=f"source={made[1]}", because="the other kettle"
    )
    assert alone(keeper, filled.code).name == "Ginger syrup, 250 mL"
    assert alone(keeper, filled.code) == listed(keeper, filled.code)


def test_a_lot_whose_opening_was_struck_is_a_struck_lot_whatever_it_was(keeper: Keeper) -> None:
    lots = receive_all(keeper)
    batch = keeper.opens("start", product="Plain syrup", kind="base-syrup", target="1L")
    keeper.do("add", lot=batch, source=lots.water, amount="1L")
    rinse = keeper.do(
        "rinse", lot=batch, source=lots.water, volume_in="20mL", volume_out="15mL", went_to="apart"
    )
    keeper.do("finish", lot=batch, volume="1L")
    filled = keeper.do("bottle", source=batch, pack="2 x 250mL", bottles=lots.bottles)
    oil = keeper.do("receive", material="orange-oil", amount="1L")
    for mistaken in (rinse, filled, oil):
        keeper.do("strike", entry=str(mistaken.seq), because="it was not so")
        assert mistaken.code is not None
        assert listed(keeper, mistaken.code).name == "Struck lot"
        assert alone(keeper, mistaken.code) == listed(keeper, mistaken.code)


def test_a_lot_has_its_name_also_where_only_what_rules_see_is_read(keeper: Keeper) -> None:
    oil = receive_all(keeper).oil
    with keeper.reading() as connection:
        assert name(lot_state(connection, oil, is_whole=False)) == listed(keeper, oil).name
