"""What went into a lot, for the rules."""

from ledger.domain.entries import Formula
from ledger.domain.entries.choices import ProductKind
from ledger.domain.lots.control import LastHeld
from ledger.domain.lots.lot import Status
from ledger.domain.masters.formulas import Called
from ledger.store.engine.statements import ask_column
from ledger.store.read.inputs import (
    HELD_LOT,
    held_cells,
    inputs,
    last_held,
    lots_called,
    numbers_into,
)
from tests.domain.builders import make
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


def test_lots_called_by_a_material_or_by_a_formula_are_told_in_order(walked: Walked) -> None:
    keeper, lots = walked
    more = keeper.opens("receive", material="spirit", amount="1 L")
    made = keeper.opens("start", product="Tonic", kind="essence", target="1 L")
    keeper.record(make(Formula, code="tonic", product="TONIC"))
    with keeper.reading() as connection:
        spirits = [number(connection, code) for code in (lots.spirit, more)]
        assert lots_called(connection, Called("spirit", None)) == spirits
        assert lots_called(connection, Called(None, "tonic")) == [number(connection, made)]
        assert lots_called(connection, Called(None, None)) == []


def test_a_vessel_last_held_what_is_in_it_and_nothing_once_it_is_clean(walked: Walked) -> None:
    keeper, _ = walked

    def held(vessel: str) -> LastHeld | None:
        with keeper.reading() as connection:
            return last_held(connection, vessel, keeper.clock())

    assert held("Demijohn 9") is None
    made = keeper.opens("start", product="Tonic", kind="essence", target="1 L", vessel="Demijohn 9")
    with keeper.reading() as connection:
        cells = held_cells("Demijohn 9", keeper.clock())
        assert ask_column(connection, HELD_LOT, **cells) == [number(connection, made)]
    assert held("demijohn 9") == LastHeld("Demijohn 9", made, "Tonic", ProductKind.ESSENCE)
    keeper.do("clean", vessel="Demijohn 9", method="Hot water")
    assert held("Demijohn 9") is None
