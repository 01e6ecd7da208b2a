"""How batches turned out is told of what the book holds, and only where there is enough."""

import pytest

from ledger.errors import RefusedError
from ledger.service.causes.chart import Charts, Figure, Series, chart_of, chartable
from tests.keeper import Keeper
from tests.path import receive_all
from tests.service.bench.makings import essence, oil_lots


def series(found: Charts, figure: Figure) -> Series:
    return next(item for item in found.series if item.figure is figure)


def test_twelve_batches_have_limits_and_the_next_is_told(sqlite_keeper: Keeper) -> None:
    lots = receive_all(sqlite_keeper)
    for place, oil in enumerate(oil_lots(sqlite_keeper, 12)):
        essence(sqlite_keeper, lots, oil, "clear", ntu=str(1 + place % 3))
    found = chart_of(sqlite_keeper.book, "orange ESSENCE")
    assert (found.of, found.batches, found.failed, found.seen) == ("Orange essence", 12, 0, 12)
    yields = series(found, Figure.YIELD)
    assert len(yields.points) == 12
    assert yields.chart is not None
    assert yields.ahead is not None
    assert found.share is not None
    assert found.share[0] == 0
    assert chart_of(sqlite_keeper.book, "essence").batches == 12
    assert chartable(sqlite_keeper.book) == (("Orange essence", "essence", 12),)


def test_batches_that_turn_after_their_making_tell_when_and_a_trial_counts_for_nothing(
    sqlite_keeper: Keeper,
) -> None:
    lots = receive_all(sqlite_keeper)
    for place, oil in enumerate(oil_lots(sqlite_keeper, 6)):
        made = essence(sqlite_keeper, lots, oil, "clear", trial="rests" if place == 5 else None)
        sqlite_keeper.clock.forward(days=10)
        sqlite_keeper.do("look", lot=made, grade="clear")
        sqlite_keeper.clock.forward(days=10)
        sqlite_keeper.do("look", lot=made, grade="cloudy")
    found = chart_of(sqlite_keeper.book, "Orange essence")
    assert (found.batches, found.failed, found.turned) == (5, 5, 5)
    ((part, watched),) = found.haze
    assert watched == 5
    assert part.after == pytest.approx(10, abs=0.6)
    assert part.by == pytest.approx(20, abs=0.6)
    assert part.share == pytest.approx(1)
    assert all(item.chart is None for item in found.series)


def test_a_look_between_two_filters_tells_nothing_of_how_a_batch_turned_out(
    sqlite_keeper: Keeper,
) -> None:
    """It is filtered since because it was cloudy; a batch turns after its making or not at all."""
    keeper, lots = sqlite_keeper, receive_all(sqlite_keeper)
    code = keeper.opens("start", product="Orange essence", kind="essence", target="90mL")
    keeper.do("add", lot=code, source=lots.spirit, amount="90mL")
    keeper.do("filter", lot=code, medium="paper", pore="25", volume_out="88mL")
    keeper.do("look", lot=code, grade="cloudy", of="neat", ntu="5")
    keeper.do("filter", lot=code, medium="paper", pore="11", volume_out="86mL")
    keeper.clock.forward(days=3)
    keeper.do("finish", lot=code, volume="85mL")
    keeper.do("look", lot=code, grade="clear", of="neat")
    keeper.clock.forward(days=7)
    keeper.do("look", lot=code, grade="clear", of="neat")
    found = chart_of(keeper.book, "Orange essence")
    assert (found.batches, found.seen, found.failed, found.turned) == (1, 1, 0, 0)
    told = [(item.figure, item.pass_no, len(item.points)) for item in found.series]
    assert told == [
        (Figure.YIELD, 0, 1),
        (Figure.NTU, 0, 1),
        (Figure.LOSS, 1, 1),
        (Figure.LOSS, 2, 1),
    ]
    assert series(found, Figure.NTU).points[0].value == 5


def test_what_nobody_made_for_sale_is_told_with_what_was(sqlite_keeper: Keeper) -> None:
    lots = receive_all(sqlite_keeper)
    essence(sqlite_keeper, lots, lots.oil, "clear")
    with pytest.raises(RefusedError) as caught:
        chart_of(sqlite_keeper.book, "rum")
    assert caught.value.problems == (
        (
            'No batch of "rum" was made for sale. Made were: Orange essence.',
            "Name a product, or a kind such as essence or syrup.",
        ),
    )
