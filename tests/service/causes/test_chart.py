"""How batches turned out is told of what the book holds, and only where there is enough."""

from math import inf

import pytest
from msgspec.structs import replace

from ledger.domain.entries import FACTS
from ledger.domain.entries.choices import Grade
from ledger.errors import RefusedError
from ledger.science.statistics.survival import Part, Span
from ledger.service.causes import chart
from ledger.service.causes.chart import (
    Charts,
    Figure,
    Series,
    _is_bad,
    _made,
    _name,
    _spans,
    _was_seen,
    _watched,
    chart_of,
    chartable,
)
from ledger.store.read.runs import Found, Seen
from tests.keeper import Keeper
from tests.path import receive_all
from tests.service.bench.makings import essence, oil_lots
from tests.service.causes.brief_runs import found as known
from tests.service.causes.brief_runs import run


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


def looked(*told: tuple[str, str]) -> list[Seen]:
    """Return looks, each a day of May and a grade."""
    return [Seen(Grade(grade), f"2026-05-{day}T12:00:00Z") for day, grade in told]


def test_a_batch_turned_between_its_last_good_look_and_its_first_bad_one() -> None:
    """Looks at what was filled from it are its own; those before its making ended are none."""
    looks = {
        1: looked(("01", "milky"), ("02", "clear"), ("07", "clear"), ("12", "hazy")),
        8: looked(("10", "clear"), ("20", "clear"), ("22", "milky")),
        2: looked(("02", "cloudy"), ("30", "clear")),
        3: looked(("12", "bright")),
        4: looked(("12", "milky")),
        5: looked(("01", "milky")),
    }
    ends = dict.fromkeys((1, 2, 3, 5), "2026-05-02T12:00:00Z")
    found = Found(looks, ends, {}, frozenset(), {1: [8, 9]})
    made = [run(lot) for lot in (1, 2, 3, 4, 5, 6)]
    assert list(_spans(made, {}, found)) == [Span(8.0, 10.0), Span(0.0, 0.0), Span(10.0, inf)]


def test_a_batch_is_watched_in_a_part_that_a_look_lies_beyond_the_beginning_of() -> None:
    spans = [Span(8.0, 10.0), Span(0.0, 3.0), Span(10.0, inf), Span(0.0, inf)]
    parts = [Part(after, 20.0, 0.5) for after in (0.0, 3.0, 8.0, 9.9, 10.0)]
    assert [_watched(spans, part) for part in parts] == [3, 2, 2, 2, 0]


def test_a_batch_failed_that_came_back_or_looked_worse_than_wanted_itself_or_in_bottles() -> None:
    found = known(
        {1: "clear", 2: "hazy", 7: "milky"},
        complaints={8: ["cloudy"], 4: []},
        sent=frozenset({5, 9}),
        packed={3: [7], 4: [8], 6: [9]},
    )
    bad = [_is_bad(run(lot), {}, found) for lot in range(1, 7)]
    assert bad == [False, True, True, True, False, False]
    assert [_was_seen(run(lot), found) for lot in range(1, 8)] == [True] * 3 + [
        *(False, True, True, True),
    ]


def test_a_product_is_charted_by_its_name_else_by_its_kind() -> None:
    every = [run(1, "Orange", "essence"), run(2, "Lime", "essence"), run(3, "Essence", "syrup")]
    assert _made(every, " ORANGE ") == [every[0]]
    assert _made(every, "essence") == [every[2]]
    assert _made(every[:2], " Essence") == every[:2]
    assert _name(every[:1], "ORANGE") == "Orange"
    assert _name(every[:2], " Essence  kind ") == "essence kind"
    with pytest.raises(RefusedError) as caught:
        _made([], "any  rum")
    assert caught.value.what == 'No batch of "any rum" was made for sale.'
    with pytest.raises(RefusedError) as caught:
        _made([*every, replace(every[0], lot=4)], "rum")
    assert caught.value.what == (
        'No batch of "rum" was made for sale. Made were: Orange, Lime, Essence.'
    )


def test_a_syrup_is_charted_against_its_target_and_its_readings_against_what_is_reckoned(
    sqlite_keeper: Keeper,
) -> None:
    """By hand: 600 g of sugar in 601 mL of water are 50 % mass, but for what the water weighs."""
    keeper, lots = sqlite_keeper, receive_all(sqlite_keeper)
    for brix in ("49.1", "52.1", ""):
        code = keeper.opens("start", product="Plain", kind="base-syrup", target="1L")
        keeper.do("add", lot=code, source=lots.sugar, amount="600g")
        at = f"{keeper.clock.now:%Y-%m-%d %H:%M}"
        keeper.do("add", lot=code, source=lots.water, amount="300mL", at=at)
        if brix:
            keeper.do("measure", lot=code, what="brix", reading="40", at=at)
        keeper.do("add", lot=code, source=lots.water, amount="301mL", at=at)
        if brix:
            keeper.do("measure", lot=code, what="brix", reading=brix, at=at)
            keeper.do("measure", lot=code, what="ph", reading="6.1", at=at)
        keeper.do("finish", lot=code, volume="950mL")
    found = chart_of(keeper.book, "base-syrup")
    told = {item.figure: [float(point.value) for point in item.points] for item in found.series}
    assert [*told] == [Figure.TARGET, Figure.BRIX]
    assert [str(figure) for figure in Figure] == [
        *("yield", "of target", "NTU", "strength", "sugar", "loss"),
    ]
    assert told[Figure.TARGET] == [95.0] * 3
    assert told[Figure.BRIX] == pytest.approx([-1, 2], abs=0.2)
    assert [point.day for point in found.series[0].points] == ["2026-03-02"] * 3
    assert (found.of, found.kind, found.seen, found.share) == ("Plain", "base-syrup", 0, None)


def test_what_is_read_of_runs_is_of_kinds_that_entries_have() -> None:
    assert set(chart.KINDS) <= set(FACTS)
