"""What the dates of lots are reckoned from: a lot first, then all it is made of."""

from datetime import date

from ledger.store.read.dates import dated
from tests.store.read.numbers import Walked, number


def test_a_lot_comes_before_what_it_is_made_of_the_youngest_first(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        (found,) = dated(connection, [number(connection, lots.essence)]).values()
    assert [item.code for item in found] == [lots.essence, lots.carb, lots.spirit, lots.oil]
    assert [item.finished_on for item in found] == [date(2026, 3, 4), None, None, None]
    assert [item.told for item in found] == [None, None, None, date(2027, 6, 30)]


def test_a_finish_that_is_struck_ends_no_making_and_a_reading_counts(walked: Walked) -> None:
    keeper, lots = walked
    finish = next(entry.seq for entry in reversed(keeper.entries()) if entry.kind == "finish")
    keeper.do("strike", entry=str(finish), because="the wrong jar")
    keeper.do("measure", lot=lots.syrup, what="brix", reading="62.5")
    with keeper.reading() as connection:
        syrup = number(connection, lots.syrup)
        own = dated(connection, [syrup])[syrup][0]
    assert (own.finished_on, own.brix_mpct) == (None, 62_500)
