"""From a lot to all it is made of, and to all that is made of it."""

from ledger.store.read import walk
from tests.store.read.numbers import Walked, number


def test_each_lot_is_met_once_the_nearer_ones_first(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        numbers = {number(connection, code): code for code in keeper.lot_codes()}
        oil, packed = number(connection, lots.oil), number(connection, lots.packed)
        back = [numbers[lot] for lot in walk.back(connection, packed)]
        near = [numbers[lot] for lot in walk.back(connection, packed, deepest=1)]
        forward = [numbers[lot] for lot in walk.forward(connection, oil)]
    assert (back[0], set(back)) == (lots.packed, set(numbers.values()))
    assert near == [lots.packed, lots.bottles, lots.syrup]
    assert forward == [lots.oil, lots.essence, lots.syrup, lots.packed]


def test_what_went_in_is_told_by_the_lot_it_went_into(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        syrup, essence = number(connection, lots.syrup), number(connection, lots.essence)
        edges = list(walk.edges_into(connection, [syrup]))
        behind = walk.behind(connection, essence)
    assert [edge.taken for edge in edges] == [2_400_000, 2_400_000, 30_000]
    assert edges[-1] == walk.Edge(essence, syrup, 30_000)
    assert [(item.code, item.verdict) for item in behind] == [
        (lots.oil, None),
        (lots.spirit, None),
        (lots.carb, None),
        (lots.essence, "release"),
    ]


def test_what_went_into_lots_is_told_of_all_that_is_behind_them(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        of = {number(connection, code): code for code in keeper.lot_codes()}
        packed = number(connection, lots.packed)
        pairs = {(of[a], of[b]) for a, b in walk.sources_behind(connection, [packed])}
        assert {lot for pair in pairs for lot in pair} == set(of.values())
    assert pairs >= {
        (lots.packed, lots.syrup),
        (lots.syrup, lots.essence),
        (lots.essence, lots.oil),
    }
    assert (lots.oil, lots.essence) not in pairs
