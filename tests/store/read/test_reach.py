"""What many lots are made of, at once."""

from ledger.store.read.reach import entries_of_lots, made_of
from tests.store.read.numbers import Walked, number


def test_each_lot_has_all_it_is_made_of_at_any_depth(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        numbers = {code: number(connection, code) for code in keeper.lot_codes()}
        found = made_of(connection, [numbers[lots.essence], numbers[lots.oil]])
    assert found == {
        numbers[lots.essence]: {numbers[code] for code in (lots.oil, lots.spirit, lots.carb)},
        numbers[lots.oil]: set(),
    }


def test_entries_of_some_kinds_come_by_lot(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        essence, packed = number(connection, lots.essence), number(connection, lots.packed)
        found = entries_of_lots(connection, [essence, packed], ["look", "finish", "complaint"])
    assert {lot: [entry.kind for entry in entries] for lot, entries in found.items()} == {
        essence: ["look", "finish"],
        packed: ["complaint"],
    }
