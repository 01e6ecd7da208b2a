"""What went into a lot, for the rules."""

from ledger.domain.lots.lot import Status
from ledger.store.read.inputs import inputs, numbers_into
from tests.store.read.numbers import Walked, number


def test_inputs_say_what_they_are_and_where_they_stand(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        into = numbers_into(connection, number(connection, lots.syrup))
        found = inputs(connection, into)
        assert inputs(connection, ()) == ()
    assert [item.code for item in found] == [lots.sugar, lots.water, lots.essence]
    assert [item.status for item in found] == [Status.IN_STOCK, Status.IN_STOCK, Status.RELEASED]
    assert [item.material for item in found] == ["sugar", "water", None]
    assert [item.product_kind for item in found] == [None, None, "essence"]


def test_an_addition_that_is_left_out_is_no_input(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        syrup, essence = number(connection, lots.syrup), number(connection, lots.essence)
        assert essence in numbers_into(connection, syrup)
        assert essence not in numbers_into(connection, syrup, skip=29)
