"""What the lots had, each thing at its level; what never differs tells nothing."""

from ledger.science.statistics.columns import BEGUN, columns
from ledger.science.statistics.levels import grounds
from ledger.science.statistics.suspects import Cause, Level, Sort
from tests.science.statistics.judged import in_turn, lot, observed


def test_what_went_together_in_all_batches_is_one_group() -> None:
    lots = in_turn("AB", "C", each=3)
    had = columns(lots, grounds(lots), frozenset())
    together = [group.causes for group in had.groups]
    assert (lot("A"), lot("B")) in together
    assert (lot("C"),) in together


def test_batches_made_here_are_no_suspects_of_this_kind() -> None:
    lots = [observed(f"S-{n}", n == 0, f"E-{n}", batch=f"E-{n}") for n in range(4)]
    assert columns(lots, grounds(lots), frozenset({"E-0", "E-1", "E-2", "E-3"})).groups == ()


def test_a_setting_is_a_suspect_at_each_of_its_levels() -> None:
    lots = [observed(f"L{n}", n < 3, chill="cold" if n < 3 else "warm") for n in range(6)]
    groups = columns(lots, grounds(lots), frozenset()).groups
    assert {cause for group in groups for cause in group.causes} == {
        Cause(Sort.SETTING, "chill", level) for level in ("cold", "warm")
    }


def test_the_time_of_making_is_a_suspect_at_each_quarter() -> None:
    lots = in_turn("A", "", each=4)
    times = {
        cause.level
        for group in columns(lots, grounds(lots), frozenset()).groups
        for cause in group.causes
        if cause.sort is Sort.TIME and cause.name == BEGUN
    }
    days = ("2026-01-04", "2026-01-07", "2026-01-10")
    assert times == {f"{word} {day}" for day in days for word in ("before", "from")}


def test_what_all_had_and_what_differs_nowhere_that_tells_is_listed() -> None:
    lots = [
        observed("F", True, "W", "A", product="Mint"),
        observed("C", False, "W", "A", product="Mint"),
        observed("L", True, "W", product="Lime"),
    ]
    had = columns(lots, grounds(lots), frozenset())
    assert (had.in_all, had.untold) == ((lot("W"),), (lot("A"),))
    assert had.groups == ()


def test_counts_are_of_units_that_could_have_been_otherwise() -> None:
    lots = in_turn("A", "", each=3, syrups=2)
    (group,) = (
        group
        for group in columns(lots, grounds(lots), frozenset()).groups
        if lot("A") in group.causes
    )
    assert group.ground.level is Level.BATCH
    assert (group.whole.failed_with, group.whole.clear_without) == (3, 6)
    assert Cause(Sort.LOT, "A") == group.causes[0]
