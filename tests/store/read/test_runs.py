"""Every making run in brief, with how it was found."""

from ledger.store.read.runs import found, runs
from tests.store.read.numbers import Walked, number


def test_runs_come_by_when_they_began(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        told = runs(connection)
    assert [(run.code, run.product, run.product_kind, run.maker) for run in told] == [
        (lots.essence, "Orange essence", "essence", "AB"),
        (lots.syrup, "Orange syrup", "syrup", "AB"),
    ]


def test_how_lots_were_found_is_told_by_their_numbers(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        known = found(connection)
        essence, syrup = number(connection, lots.essence), number(connection, lots.syrup)
        packed = number(connection, lots.packed)
    looks = {lot: [str(seen.grade) for seen in seen] for lot, seen in known.looks.items()}
    assert looks == {essence: ["hazy"], syrup: ["cloudy"]}
    assert known.complaints == {packed: ["cloudy"]}
    assert known.packed == {syrup: [packed]}
    assert known.sent == {packed}


def test_a_struck_complaint_is_none(walked: Walked) -> None:
    keeper, _ = walked
    keeper.do("strike", entry="35", because="another maker's")
    with keeper.reading() as connection:
        assert found(connection).complaints == {}
