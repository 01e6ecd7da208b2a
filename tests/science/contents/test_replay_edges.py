"""Where replaying turns: just kept and just passed, nothing there, the least, circles."""

import pytest

from ledger.science.contents.composition import REST, Contents, Part, PartKey
from ledger.science.contents.replay import _difference
from tests.science.contents.test_replay import Bench
from tests.science.liquids.liquid_rows import ML


@pytest.fixture
def bench() -> Bench:
    return Bench()


def test_a_draw_a_reading_and_a_rinse_may_be_off_by_just_two_per_cent(bench: Bench) -> None:
    bench.put("E", "WATER", 50)
    bench.put("S", "E", 51)
    bench.put("F", "WATER", 50)
    bench.level("F", 51)
    bench.put("R", "WATER", 50, given=51_000, kind="rinse")
    assert [bench.of(lot).unknown_ul for lot in "SFR"] == [{}, {}, {}]
    assert [bench.replay().happenings(lot)[-1].passed for lot in "SER"] == [1.0] * 3
    assert bench.of("S").notes | bench.of("F").notes == frozenset()


def test_volumes_are_told_to_four_figures(bench: Bench) -> None:
    bench.put("E", "WATER", 100)
    bench.level("E", 123.456)
    assert bench.of("E").notes == {
        "E: entry 2 measured 123.5 mL where 100 mL were reckoned; the measured volume counts."
    }


def test_goods_that_come_back_to_a_lot_of_which_nothing_is_known_bring_nothing(
    bench: Bench,
) -> None:
    bench.back("S", 100 * ML)
    assert bench.replay().happenings("S")[0].beyond == 0
    assert bench.of("S") == Contents()


def test_of_a_rinse_without_volume_no_share_ran_through(bench: Bench) -> None:
    bench.put("E", "SUGAR", 30, given=40_000, kind="rinse")
    found = bench.replay().happenings("E")[0]
    assert (found.passed, found.is_vague, found.after.volume_ul) == (0, False, 0)


def test_the_least_that_the_book_keeps_is_drawn_whole_and_rinsed_beyond(bench: Bench) -> None:
    bench.put("E", "WATER", 0.001)
    bench.put("S", "E", 0.001)
    bench.put("R", "WATER", 0.001, given=5, kind="rinse")
    bench.put("L", "WATER", 0.001)
    bench.level("L", 0)
    replay = bench.replay()
    assert replay.happenings("L")[-1].moved.volume_ul == pytest.approx(1)
    assert replay.happenings("E")[-1].passed == 1.0
    assert replay.happenings("R")[-1].is_vague


def test_what_fills_nothing_is_not_lost_with_a_volume() -> None:
    solid = Contents(parts={PartKey(REST, "acid"): Part(5000, 0.0)}, notes=frozenset({"acid"}))
    assert _difference(solid, Contents()) == Contents()


def test_lots_that_are_made_of_each_other_are_told_as_a_circle(bench: Bench) -> None:
    bench.put("A", "WATER", 50)
    bench.put("B", "A", 10)
    bench.put("A", "B", 5)
    replay = bench.replay()
    assert bench.replay().circles == ()
    replay.play(["A", "B"])
    assert replay.circles == (("A", "B"),)
    assert replay.order == ("B", "A")


def test_what_came_back_once_is_out_no_longer(bench: Bench) -> None:
    bench.put("P", "SPIRIT", 500, given=2_000_000, kind="bottle")
    bench.out("P", 2_000_000)
    for _ in range(3):
        bench.back("P", 1_000_000)
    found = bench.replay().happenings("P")[-3:]
    assert [one.passed for one in found] == pytest.approx([0.5, 1.0, 0.0])
    assert [one.beyond for one in found] == pytest.approx([0.0, 0.0, 0.5])
