"""The state of a lot, now and at a moment."""

import pytest

from ledger.domain.lots.state import Status, status
from ledger.errors import RefusedError
from ledger.service.account.state import lot_state
from ledger.store.read.queries import Moment
from tests.keeper import Keeper
from tests.path import Lots


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
