"""A planted cause is found at its level, an innocent is not named, what goes together is said."""

from fractions import Fraction
from itertools import product
from typing import Any

import pytest
from msgspec.structs import replace

from ledger.science.statistics.columns import columns
from ledger.science.statistics.exact import Table, counts_of, one_sided
from ledger.science.statistics.judge import LEAD, WORTH_A_TRIAL, _is_beside, _is_lead, judge
from ledger.science.statistics.levels import grounds
from ledger.science.statistics.looks import share_left
from ledger.science.statistics.suspects import LEVEL, Cause, Conclusion, Level, Observed, Sort
from tests.benchmarks.innocent import accused, named, quickly_named
from tests.benchmarks.innocent import observed as observed_in
from tests.benchmarks.worlds import BAD, World, play
from tests.science.statistics.judged import in_turn, lot, observed, told


@pytest.mark.parametrize("seed", range(4))
def test_a_bad_oil_lot_is_found_in_a_long_year(seed: int) -> None:
    runs = observed_in(play(World(120, rate=0.05, oils=5, is_bad=True), seed))
    assert named(runs) == quickly_named(runs) == [BAD]


def test_a_judge_that_stops_early_names_what_the_whole_judge_names() -> None:
    worlds = [World(40, rate=0.1, is_bad=True), World(60, rate=0.25, drift="up", shared=0.5)]
    years = [observed_in(play(world, seed)) for world in worlds for seed in range(12)]
    assert [quickly_named(runs) for runs in years] == [named(runs) for runs in years]
    assert any(named(runs) for runs in years)


def test_in_years_of_luck_alone_an_innocent_is_hardly_ever_named() -> None:
    """Thousands of years are played by `python -m tests.benchmarks.innocent`."""
    books = 40
    assert accused(World(18, shared=1.0, rate=0.3), books) <= 4 * LEVEL * books


def test_a_cause_is_counted_by_batches_and_the_counts_can_be_checked_by_hand() -> None:
    """Five of fifteen batches failed, all five with it: once in C(15, 5) = 3003."""
    found = judge(in_turn("AW", "W", syrups=3))
    (suspect,) = found.named
    assert found.verdict is Conclusion.CAUSE
    assert (suspect.cause, suspect.level, suspect.p) == (lot("A"), Level.BATCH, Fraction(1, 3003))
    assert (suspect.table, suspect.units) == (Table(15, 0, 0, 30), Table(5, 0, 0, 10))
    assert found.in_all == (lot("W"),)
    assert (found.top.units, found.top.failed) == (15, 5)


def test_many_lots_of_two_batches_decide_nothing() -> None:
    found = judge(in_turn("A", "", each=2, syrups=10, gap=5))
    assert found.named == ()
    assert found.lead is not None
    assert (found.verdict, found.lead.cause) == (Conclusion.LEAD, lot("A"))
    assert found.lead.units == Table(2, 0, 0, 8)


def test_what_went_together_in_every_batch_cannot_be_told_apart() -> None:
    found = told("AB", "")
    assert found.lead is not None
    assert (found.verdict, found.named) == (Conclusion.INSEPARABLE, ())
    assert found.lead.causes == (lot("A"), lot("B"))


def test_what_explains_the_failures_nearly_as_well_cannot_be_told_apart() -> None:
    """Of the batches that failed one had no A and another no B, and no clear one had either."""
    lots = in_turn("AB", "", each=12, gap=2)
    lots[1] = replace(lots[1], inputs=frozenset("A"))
    lots[3] = replace(lots[3], inputs=frozenset("B"))
    found = judge(lots)
    assert found.lead is not None
    assert found.verdict is Conclusion.INSEPARABLE
    assert set(found.lead.causes) == {lot("A"), lot("B")}


def test_what_simply_followed_cannot_be_told_from_the_time() -> None:
    lots = [
        observed(f"S-{n}", n >= 10, "OLD" if n < 10 else "NEW", batch=f"E-{n}",
                 begun=f"2026-03-{n + 1:02d}")
        for n in range(16)
    ]  # fmt: skip
    found = judge(lots)
    assert found.lead is not None
    assert found.verdict is Conclusion.INSEPARABLE
    assert found.lead.cause == lot("NEW")
    assert {cause.sort for cause in found.lead.not_separable_from} == {Sort.TIME}


def test_what_differs_within_batches_is_compared_within_them() -> None:
    """Of four lots of a batch the one with it failed, six batches over: once in 4^6 = 4096."""
    lots = [
        observed(f"S-{batch}-{n}", n == batch % 4, *("X" if n == batch % 4 else ""),
                 batch=f"E-{batch}", begun=f"2026-{batch + 1:02d}-{n + 1:02d}")
        for batch, n in product(range(6), range(4))
    ]  # fmt: skip
    (suspect,) = judge(lots).named
    assert (suspect.cause, suspect.level) == (lot("X"), Level.RUN)
    assert suspect.p == Fraction(1, 4096)
    assert len(suspect.strata) == 6


def test_sugar_that_went_with_the_bad_batches_is_judged_within_them_and_is_innocent() -> None:
    lots = [
        observed(f"S-{batch}-{n}", batch % 3 == 0, *("X" if batch % 3 == 0 or n == 0 else ""),
                 batch=f"E-{batch}", begun=f"2026-{batch // 3 + 1:02d}-{batch + 1:02d}")
        for batch, n in product(range(18), range(4))
    ]  # fmt: skip
    found = judge(lots)
    assert lot("X") in found.untested
    assert found.named == ()


def test_batches_that_hang_together_by_rework_count_once() -> None:
    """Four batches in a row, each with some of the one before: one stroke of luck, not four."""
    lots = in_turn("A", "", each=4, gap=4)
    chain = [replace(one, batch=" ".join(f"R-{n}" for n in range(place + 1)))
             for place, one in enumerate(item for item in lots if item.is_failed)]  # fmt: skip
    found = judge([*chain, *(item for item in lots if not item.is_failed)])
    assert found.top.failed == 1
    assert found.named == ()


def test_a_batch_made_here_is_where_failures_sit_and_never_a_cause() -> None:
    lots = [
        observed(f"S-{batch}-{n}", batch == 2, f"E-{batch}", batch=f"E-{batch}")
        for batch, n in product(range(4), range(6))
    ]
    found = judge(lots)
    assert found.lead is not None
    assert (found.verdict, found.lead.cause, found.named) == (Conclusion.LEAD, lot("E-2"), ())


def test_essences_without_batches_behind_them_are_counted_each() -> None:
    lots = [observed(f"F{n}", True, "OIL") for n in range(5)]
    lots += [observed(f"C{n}", False) for n in range(10)]
    (suspect,) = judge(lots).named
    assert (suspect.cause, suspect.level, suspect.p) == (lot("OIL"), Level.RUN, Fraction(1, 3003))


def test_a_setting_and_a_lot_that_went_together_are_not_separated() -> None:
    lots = [observed(f"F{n}", True, "OIL", passes="1") for n in range(6)]
    lots += [observed(f"C{n}", False, passes="2") for n in range(9)]
    found = judge(lots)
    assert found.lead is not None
    assert found.lead.causes == (lot("OIL"), Cause(Sort.SETTING, "passes", "1"))


def test_what_was_not_written_down_is_no_suspect() -> None:
    lots = [observed(f"F{n}", True, chill="not recorded") for n in range(6)]
    lots += [observed(f"C{n}", False, chill="up to 4 °C") for n in range(9)]
    found = judge(lots)
    assert Cause(Sort.SETTING, "chill", "not recorded") in found.untested
    assert found.named == ()


def test_beside_a_cause_another_is_held_to_what_it_does_where_that_was_the_same() -> None:
    """By hand, with the sugar 2 and 1 of 3 with and without the oil failed, without it 2 and 0."""
    kinds = [("OS", 2, 1), ("S", 1, 2), ("O", 2, 0), ("", 0, 4)]
    lots = [
        observed(f"L-{had}-{is_failed}-{number}", is_failed, *had)
        for had, failed, clear in kinds
        for is_failed, many in ((True, failed), (False, clear))
        for number in range(many)
    ]
    by_cause = {
        group.causes[0]: group for group in columns(lots, grounds(lots), frozenset()).groups
    }
    p = one_sided(counts_of([Table(2, 1, 1, 2), Table(2, 0, 0, 4)]))
    oil, sugar, level = by_cause[lot("O")], by_cause[lot("S")], 2 * p / share_left(5)
    assert _is_beside(oil, [sugar], 2, level)
    assert not _is_beside(oil, [sugar], 2, level * Fraction(999, 1000))
    assert not _is_beside(oil, [sugar], 3, level)


def test_what_goes_along_with_a_cause_is_not_named_beside_it() -> None:
    lots = in_turn("A", "", each=10)
    lots = [replace(one, inputs=one.inputs | {"JAR"}) if one.is_failed or n % 9 == 0 else one
            for n, one in enumerate(lots)]  # fmt: skip
    assert [item.cause for item in judge(lots).named] == [lot("A")]


def test_two_causes_that_each_fail_lots_are_both_named() -> None:
    made = list(product((False, True), (False, True), range(12)))
    lots = [
        observed(f"L{n}", oil or carbonate, *(["OIL"] * oil), *(["CARB"] * carbonate))
        for n, (oil, carbonate, _) in enumerate(made)
    ]
    assert {item.cause for item in judge(lots).named} == {lot("OIL"), lot("CARB")}


def test_a_product_that_fails_more_is_no_reason_to_blame_what_only_it_is_made_of() -> None:
    """Of mint everything failed and of lemon nothing; within a product nothing differs."""
    lots = [observed(f"F{n}", True, "MINT", product="Mint syrup") for n in range(8)]
    lots += [observed(f"C{n}", False, "LEMON", product="Lemon syrup") for n in range(8)]
    lots += [observed("M", False, "MINT", product="Mint syrup")]
    found = judge(lots)
    assert found.verdict is Conclusion.TOO_FEW
    assert (found.named, found.clear) == ((), ("M",))


def test_where_different_products_are_compared_nothing_is_named() -> None:
    lots = in_turn("A", "")
    assert judge(lots).verdict is Conclusion.CAUSE
    mixed = judge(lots, is_mixed=True)
    assert (mixed.verdict, mixed.named) == (Conclusion.LEAD, ())


def test_what_other_products_had_without_harm_is_less_likely_and_still_no_name() -> None:
    lots = in_turn("AB", "")
    elsewhere = [
        observed(f"X-{n}", False, "B", product="Lemon", batch=f"L-{n}", begun="2026-01-01")
        for n in range(4)
    ]
    found = judge([*lots, *elsewhere])
    assert found.lead is not None
    assert (found.verdict, found.named) == (Conclusion.LEAD, ())
    assert found.lead.cause == lot("A")
    assert [item.cause for item in found.lead.set_apart] == [lot("B")]


PLAIN = judge(in_turn("A")).suspects[0]


@pytest.mark.parametrize(
    ("changed", "is_lead"),
    [
        ({}, True),
        ({"p": LEAD * 2}, False),
        ({"p_adjusted": None}, False),
        ({"p_adjusted": WORTH_A_TRIAL + Fraction(1, 999)}, False),
        ({"p_adjusted": None, "units": Table(2, 0, 0, 6)}, True),
        ({"units": Table(1, 0, 0, 6)}, False),
        ({"cause": Cause(Sort.TIME, "begun", "before 2026-01-04")}, False),
    ],
)
def test_a_lead_is_unlikely_by_itself_and_worth_a_trial_or_clean(
    changed: dict[str, Any], *, is_lead: bool
) -> None:
    just = replace(PLAIN, p=LEAD, p_adjusted=WORTH_A_TRIAL, units=Table(2, 1, 1, 6))
    assert _is_lead(replace(just, **changed)) is is_lead


@pytest.mark.parametrize(
    ("failed", "clear"), [(0, 5), (1, 30), (5, 0), (2, 2)], ids=["none", "one", "all", "few"]
)
def test_too_few_are_said_to_be_too_few_and_nothing_is_named(failed: int, clear: int) -> None:
    lots = [observed(f"F{n}", True, "OIL") for n in range(failed)]
    lots += [observed(f"C{n}", False) for n in range(clear)]
    found = judge(lots)
    assert (found.verdict, found.named, found.lead) == (Conclusion.TOO_FEW, (), None)


def test_evidence_without_a_pattern_names_nothing() -> None:
    lots = [
        observed(f"L{n}", n % 2 == 0, "OIL" if n % 4 < 2 else "OTHER", pore=str(n % 3))
        for n in range(24)
    ]
    found = judge(lots)
    assert found.verdict is Conclusion.NONE
    assert found.tested > 0


def test_one_book_always_gets_one_answer() -> None:
    def told_of(lots: list[Observed]) -> list[Fraction | None]:
        return [item.p_adjusted for item in judge(lots).suspects]

    assert told_of(in_turn("AB", "B", each=8)) == told_of(in_turn("AB", "B", each=8))
