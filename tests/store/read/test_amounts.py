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


def test_sugar_counts_as_dissolving_until_the_volume_is_measured_and_clarifier_never(
    walked: Walked,
) -> None:
    keeper, lots = walked
    code = keeper.opens("start", product="Cordial", kind="syrup", target="4L")

    def there() -> Held:
        with keeper.reading() as connection:
            return held(connection, number(connection, code))

    keeper.do("add", lot=code, source=lots.water, amount="2L")
    keeper.do("add", lot=code, source=lots.carb, amount="15g")
    assert there() == Held(2_000_000, 0)
    keeper.do("add", lot=code, source=lots.sugar, amount="2kg")
    keeper.do("add", lot=code, source=lots.sugar, amount="500g")
    assert there() == Held(2_000_000, 2_500_000)
    keeper.clock.forward(minutes=5)
    keeper.do("finish", lot=code, volume="3.5L")
    assert there() == Held(3_500_000, 0)
