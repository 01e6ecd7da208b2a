"""Lots replayed from what was put in, taken out and measured."""

from collections import defaultdict

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.lots.steps import Act, Step
from ledger.science.contents.composition import Contents
from ledger.science.contents.received import ReceivedLot
from ledger.science.contents.replay import Replay
from tests.science.liquids.liquid_rows import (
    CARBONATE,
    ML,
    SUGAR,
    WATER,
    masses,
    oil,
    oil_percent,
    some,
    spirit,
)

RECEIVED = {
    "SPIRIT": spirit(96),
    "OIL": oil(),
    "SUGAR": SUGAR,
    "WATER": WATER,
    "CARB": CARBONATE,
    "BOTTLES": ReceivedLot("BOTTLES", "b250", "Bottle", MaterialKind.BOTTLE, Measure.UEACH),
}


class Bench:
    """Writes the steps of lots, as they happen."""

    def __init__(self) -> None:
        self.steps: dict[str, list[Step]] = defaultdict(list)
        self.entry = 0

    def put(
        self,
        lot: str,
        source: str,
        ml: float,
        *,
        given: int | None = None,
        kind: str = "add",
    ) -> None:
        """Put mL (or g) of a lot into another."""
        self.entry += 1
        taken, draw = round(ml * ML), 0
        if source not in RECEIVED:
            draw = len(self.steps[source])
            self.steps[source].append(Step(Act.OUT, taken, entry=self.entry, kind=kind))
        amount = taken if given is None else given
        self.steps[lot].append(
            Step(Act.INTO, amount, source, taken, draw, entry=self.entry, kind=kind)
        )

    def level(self, lot: str, ml: float, kind: str = "finish") -> None:
        self.entry += 1
        self.steps[lot].append(Step(Act.LEVEL, round(ml * ML), entry=self.entry, kind=kind))

    def out(self, lot: str, amount: float, where: str = "sale") -> None:
        self.entry += 1
        step = Step(Act.OUT, round(amount), entry=self.entry, kind="move", outside=where)
        self.steps[lot].append(step)

    def back(self, lot: str, amount: float) -> None:
        self.entry += 1
        step = Step(Act.INTO, round(amount), entry=self.entry, kind="move", outside="returned")
        self.steps[lot].append(step)

    def of(self, lot: str) -> Contents:
        return self.replay().contents(lot)

    def replay(self) -> Replay:
        return Replay(self.steps, RECEIVED)


@pytest.fixture
def bench() -> Bench:
    return Bench()


def test_an_essence_is_made_filtered_and_finished(bench: Bench) -> None:
    """One part of oil in fifteen of 96 % spirit: 90 % vol and 6.25 % oil."""
    bench.put("E", "OIL", 30)
    bench.put("E", "CARB", 15, given=0)
    bench.put("E", "SPIRIT", 450)
    bench.level("E", 455, "filter")
    bench.level("E", 452)
    found = bench.of("E")
    assert found.volume_ul == 452 * ML
    assert found.abv == pytest.approx(90, abs=0.01)
    assert oil_percent(found, "lemon-oil") == pytest.approx(6.25)
    assert list(found.oils()) == ["lemon-oil"]


def test_each_draw_takes_the_lot_as_it_was_then(bench: Bench) -> None:
    bench.put("FOUNTAIN", "SPIRIT", 100)
    bench.put("FIRST", "FOUNTAIN", 50)
    bench.put("FOUNTAIN", "WATER", 50)
    bench.put("SECOND", "FOUNTAIN", 50)
    assert bench.of("FIRST").abv == pytest.approx(96)
    assert 45 < bench.of("SECOND").abv < 52
    assert bench.of("SECOND").abv == pytest.approx(bench.of("FOUNTAIN").abv)
    came, drawn = bench.replay().happenings("FOUNTAIN")[:2]
    assert (came.kept, came.passed, came.beyond, came.is_vague) == (1, 1, 0, False)
    assert (drawn.kept, drawn.passed) == pytest.approx((0.5, 0.5))
    assert (drawn.beyond, drawn.is_vague) == (0, False)


def test_a_make_up_is_no_loss_and_its_volume_wins(bench: Bench) -> None:
    bench.put("E", "SPIRIT", 400)
    bench.put("E", "WATER", 100, kind="makeup")
    bench.level("E", 490, "makeup")
    found = bench.of("E")
    assert found.volume_ul == 490 * ML
    assert found.abv == pytest.approx(96 * 400 / 490, abs=0.01)


def test_what_ran_through_beyond_a_rinse_is_unknown_liquid_of_its_cake(bench: Bench) -> None:
    """Of 30 mL put on 40 mL ran through, so 10 mL are of the cake; of 30.1 mL none is told."""
    bench.put("E", "SPIRIT", 100)
    bench.put("E", "SPIRIT", 30, given=40_000, kind="rinse")
    bench.put("F", "SPIRIT", 30, given=30_100, kind="rinse")
    assert bench.of("E").unknown_ul == {"the cake of entry 2": pytest.approx(10_000)}
    assert bench.of("F").unknown_ul == {}


def test_a_rinse_brings_what_ran_through_as_the_liquid_put_on(bench: Bench) -> None:
    bench.put("E", "OIL", 30)
    bench.put("E", "SPIRIT", 30, given=27_000, kind="rinse")
    assert bench.of("E").volume_ul == pytest.approx(57 * ML, rel=1e-3)
    assert "The rinse with SPIRIT is counted as that liquid alone (entry 2)." in bench.of("E").notes


def test_what_nobody_measured_adds_nothing_and_is_said(bench: Bench) -> None:
    bench.put("OLD", "OIL", 1)
    bench.put("E", "SPIRIT", 10)
    bench.put("E", "OLD", 0, kind="filter")
    assert bench.of("E").oils() == {}
    assert "What came over from OLD unmeasured is not counted (entry 3)." in bench.of("E").notes


def test_bottles_share_the_bulk_and_can_be_poured_back(bench: Bench) -> None:
    bench.put("S", "WATER", 1000)
    bench.put("P", "S", 750, given=3_000_000, kind="bottle")
    bench.out("P", 1_000_000)
    bench.back("P", 1_000_000)
    bench.out("P", 1_000_000)
    assert bench.of("P").volume_ul == pytest.approx(500 * ML)


def test_bottles_are_as_strong_as_the_bulk_and_hold_what_was_drawn(bench: Bench) -> None:
    """A bulk measured at 495 mL where 485.8 mL are reckoned; 450 mL of it in 15 bottles."""
    bench.put("E", "SPIRIT", 300)
    bench.put("E", "WATER", 200)
    bench.level("E", 495)
    bench.put("P", "E", 450, given=15_000_000, kind="bottle")
    strength = bench.of("E").abv
    bench.out("P", 15_000_000)
    bottles = bench.replay().happenings("P")
    assert bottles[0].after.abv == pytest.approx(strength)
    assert bottles[1].moved.volume_ul == pytest.approx(450 * ML)
    assert not any("nothing is known" in note for note in bottles[1].moved.notes)
    assert [one.units for one in bottles] == pytest.approx([15_000_000, 0])


def test_goods_that_come_back_when_all_were_gone_are_what_they_were(bench: Bench) -> None:
    bench.put("S", "SPIRIT", 500)
    bench.put("P", "S", 500, given=2_000_000, kind="bottle")
    bench.out("P", 2_000_000)
    bench.back("P", 1_000_000)
    assert bench.of("P").volume_ul == pytest.approx(250 * ML)
    assert bench.of("P").abv == pytest.approx(96)
    back = bench.replay().happenings("P")[-1]
    assert (back.passed, back.beyond) == pytest.approx((0.5, 0))


def test_goods_that_come_back_though_none_are_known_to_be_out_are_as_the_lot_was_last(
    bench: Bench,
) -> None:
    """The book says that all of it was thrown away, and then some of it is there again."""
    bench.put("S", "SPIRIT", 500)
    bench.out("S", 500 * ML, where="waste")
    bench.back("S", 100 * ML)
    assert bench.of("S").volume_ul == pytest.approx(100 * ML)
    assert bench.of("S").abv == pytest.approx(96)
    back = bench.replay().happenings("S")[-1]
    assert (back.passed, back.beyond) == pytest.approx((0, 0.2))


def test_a_draw_of_more_than_is_there_is_said_and_of_the_rest_nothing_is_known(
    bench: Bench,
) -> None:
    bench.put("E", "WATER", 100)
    bench.put("S", "E", 150)
    bench.put("S", "E", 10)
    found = bench.of("S")
    assert found.unknown_ul == {"E": pytest.approx(60 * ML)}
    drawn = bench.replay().happenings("E")[1:]
    assert [(one.passed, one.is_vague) for one in drawn] == [(1.0, True), (0.0, True)]
    assert (
        "E: entry 2 drew 150 mL where 100 mL were reckoned; of the rest nothing is known."
        in found.notes
    )


def test_large_volumes_are_said_in_full(bench: Bench) -> None:
    bench.put("E", "WATER", 12_000)
    bench.put("S", "E", 15_000)
    assert (
        "E: entry 2 drew 15000 mL where 12000 mL were reckoned; of the rest nothing is known."
        in bench.of("S").notes
    )


def test_a_draw_of_a_little_more_than_is_there_is_put_down_to_warmth(bench: Bench) -> None:
    bench.put("E", "SPIRIT", 100)
    bench.put("S", "E", 101)
    assert masses(bench.of("S")) == pytest.approx(masses(some(RECEIVED["SPIRIT"], 100 * ML)))
    assert bench.of("S").unknown_ul == {}


def test_a_volume_well_over_the_reckoned_one_is_said(bench: Bench) -> None:
    bench.put("E", "WATER", 100)
    bench.level("E", 110)
    assert (
        "E: entry 2 measured 110 mL where 100 mL were reckoned; the measured volume counts."
        in bench.of("E").notes
    )


def test_a_chain_of_thousands_of_top_ups_is_done(bench: Bench) -> None:
    bench.put("L0", "SPIRIT", 1)
    for number in range(1, 3000):
        bench.put(f"L{number}", f"L{number - 1}", 0.9)
        bench.put(f"L{number}", "SPIRIT", 0.1)
    assert bench.of("L2999").abv == pytest.approx(96)


STEPS = st.lists(
    st.tuples(
        st.sampled_from(["in", "in", "in", "over", "level", "makeup", "out", "back"]),
        st.integers(0, 4),
        st.integers(0, 4),
        st.sampled_from(["SPIRIT", "OIL", "SUGAR", "WATER"]),
        st.integers(1, 100),
    ),
    max_size=25,
)


@given(steps=STEPS)
def test_what_was_received_is_in_all_lots_or_lost_or_sent(
    steps: list[tuple[str, int, int, str, int]],
) -> None:
    """Mass is conserved through any tree of additions, draws and measured volumes."""
    bench = Bench()
    for what, one, two, source, amount in steps:
        low, high = f"L{min(one, two)}", f"L{max(one, two)}"
        if what in ("in", "makeup"):
            bench.put(low, source, amount, given=0 if source == "SUGAR" else None, kind="add")
            if what == "makeup":
                bench.level(low, amount, "makeup")
        elif what == "level":
            bench.level(low, amount, "filter")
        elif what == "over" and low != high:
            bench.put(high, low, amount)
        elif what == "out":
            bench.out(low, amount * ML)
    came: dict[str, float] = defaultdict(float)
    gone: dict[str, float] = defaultdict(float)
    replay = bench.replay()
    for lot in list(bench.steps):
        happened = replay.happenings(lot)
        for item in happened:
            for name, mass in masses(item.moved).items():
                if item.step.act is Act.INTO and item.step.source in RECEIVED:
                    came[name] += mass
                elif item.step.act is Act.LEVEL or item.step.outside:
                    gone[name] += mass
        for name, mass in masses(happened[-1].after).items():
            gone[name] += mass
    for name, mass in came.items():
        assert gone[name] == pytest.approx(mass, rel=1e-6, abs=1e-3)
