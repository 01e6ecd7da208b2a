"""The state of a lot, now and at a moment; it tells the same lot as a list of many does."""

import pytest

from ledger.domain.lots.lot import Lot, Status
from ledger.domain.lots.state import in_brief, name, status
from ledger.errors import RefusedError
from ledger.service.account.state import lot_state
from ledger.service.lots.stock import stock
from ledger.store.read.queries import Moment
from tests.keeper import Keeper
from tests.path import Lots, receive_all
from tests.service.engines import ON_EACH_ENGINE


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


@ON_EACH_ENGINE
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


def test_a_packed_lot_knows_its_bulk_and_what_all_of_it_is_made_of(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        state, oil = lot_state(connection, lots.packed), lot_state(connection, lots.oil)
    assert (state.code, state.on_hand) == (lots.packed, 9_000_000)
    assert status(state) is Status.RELEASED
    assert state.bulk is not None
    assert state.bulk.code == lots.syrup
    assert oil.seq in state.made_from
    assert f"{state.best_before}" == "2027-06-30"
    assert state.barred_inputs == ()


def test_a_held_input_bars_what_is_made_of_it(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("judge", lot=lots.oil, verdict="hold", because="smells of pine")
    with keeper.reading() as connection:
        assert lot_state(connection, lots.packed).barred_inputs == (lots.oil,)
        assert lot_state(connection, lots.packed, is_whole=False).barred_inputs == ()


def test_what_was_there_just_before_a_moment_is_told_beside_what_is_there_now(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    sold = next(entry for entry in keeper.entries() if entry.kind == "move")
    moment = Moment(sold.draft.happened.at, sold.stands_for)
    with keeper.reading() as connection:
        state = lot_state(connection, lots.packed, moment)
    assert (state.on_hand_then, state.on_hand) == (15_000_000, 9_000_000)


def test_a_lot_that_is_not_in_the_book_has_no_state(sqlite_keeper: Keeper) -> None:
    with sqlite_keeper.reading() as connection, pytest.raises(RefusedError) as raised:
        lot_state(connection, "NONE-1")
    assert raised.value.problems == (
        ("The lot NONE-1 is not in the book.", "pottle stock lists the lots that are."),
    )
