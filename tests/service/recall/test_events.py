"""What came, was made and went out in a period, with what each was made of."""

from datetime import date

from ledger.service.lots.sales import Period
from ledger.service.recall.events import events_of
from tests.keeper import Keeper
from tests.path import Lots


def test_events_of_a_period_are_told_with_their_inputs(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("send", lot=lots.packed, amount="1", moved_as="returned", party="A Bar")
    found = events_of(keeper.book, Period())
    made = {item.brief.code: item for item in found.transformed}
    assert {lot.code: amount for lot, amount in made[lots.syrup].inputs} == {
        lots.sugar: 2_400_000,
        lots.water: 2_400_000,
        lots.essence: 30_000,
    }
    assert (made[lots.packed].made, made[lots.essence].made) == (15_000_000, 448_000)
    assert [(item.brief.code, item.is_return) for item in found.received][-1] == (
        lots.packed,
        True,
    )
    later = events_of(keeper.book, Period(first=date(2026, 3, 9)))
    assert (len(later.received), later.transformed, later.sent) == (1, (), ())
