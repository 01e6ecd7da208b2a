"""What lots hold: by the last measured level and what moved since, as the view says."""

from ledger.store.read.amounts import Held, held, held_then_and_now, on_hand
from ledger.store.read.queries import Moment
from tests.store.read.numbers import Walked, number


def test_what_all_lots_hold_is_what_the_view_says(walked: Walked) -> None:
    keeper, _ = walked
    with keeper.reading() as connection:
        numbers = {code: number(connection, code) for code in keeper.lot_codes()}
        told = on_hand(connection, list(numbers.values()))
        one_by_one = {lot: held(connection, lot).amount for lot in numbers.values()}
    assert told == one_by_one
    assert {told[lot] for lot in numbers.values()} == set(map(keeper.on_hand, numbers))


def test_a_moment_has_what_was_there_before_it(walked: Walked) -> None:
    """448 mL of essence were measured; 30 mL of it went into the syrup."""
    keeper, lots = walked
    added = keeper.entry(29)
    assert (added.kind, added.draft.lot) == ("add", lots.syrup)
    moment = Moment(added.draft.happened.at, added.stands_for)
    with keeper.reading() as connection:
        then, now = held_then_and_now(connection, number(connection, lots.essence), moment)
    assert (then, now) == (Held(448_000, 0), Held(418_000, 0))


def test_what_is_left_out_counts_as_if_it_had_not_been(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        essence = number(connection, lots.essence)
        assert held(connection, essence, skip=29) == Held(448_000, 0)
