"""A planted cause is found, confounded causes are not separated, noise is not ranked."""

from fractions import Fraction
from itertools import product

import pytest
from msgspec.structs import replace

from ledger.science.statistics.exact import Table
from ledger.science.statistics.judge import judge
from ledger.science.statistics.suspects import LEVEL, Cause, Conclusion, Sort
from ledger.science.statistics.trial_plan import crossing
from tests.benchmarks.false_alarms import false_alarms
from tests.science.statistics.judged import lot, observed, split
from tests.science.statistics.seasons import by_cause, season


@pytest.mark.parametrize("seed", range(5))
def test_a_planted_cause_is_found(seed: int) -> None:
    found = judge(season(seed, by_cause("OIL-1"), 60))
    assert "OIL-1" in {cause.name for cause in found.named[0].causes}
    assert found.conclusion in {Conclusion.NAMED, Conclusion.TOGETHER}
    assert len(found.named) == 1


def test_counts_add_up_and_can_be_checked_by_hand() -> None:
    lots = season(3, by_cause("OIL-1"), 60)
    found = judge(lots)
    assert len(found.suspects) > 1
    for suspect in found.suspects:
        table = suspect.table
        assert table.failed == len(found.failed)
        assert table.clear == len(found.clear)
        cause = suspect.cause
        had = [
            item
            for item in lots
            if (cause.name in item.inputs or item.settings.get(cause.name) == cause.level)
            != cause.is_absent
        ]
        assert (table.failed_with, table.clear_with) == (
            sum(item.is_failed for item in had),
            sum(not item.is_failed for item in had),
        )


def test_a_clean_split_of_nine_lots_is_named() -> None:
    lots = [observed(f"F{n}", True, "OIL", "W", f"X{n}") for n in range(5)]
    lots += [observed(f"C{n}", False, "W", f"Y{n}") for n in range(4)]
    found = judge(lots)
    assert found.conclusion is Conclusion.NAMED
    (suspect,) = found.named
    assert suspect.cause == lot("OIL")
    assert suspect.table == Table(5, 0, 0, 4)
    assert suspect.p == suspect.p_adjusted == Fraction(1, 126)
    assert found.tested == 1
    assert found.in_all == (lot("W"),)


def test_confounded_causes_are_one_suspect() -> None:
    found = split(("OIL", "CARB"), ())
    assert found.conclusion is Conclusion.TOGETHER
    (suspect,) = found.named
    assert suspect.causes == (lot("CARB"), lot("OIL"))


def test_a_batch_is_told_apart_from_its_own_oil_by_a_fresh_batch() -> None:
    trial = crossing([lot("ESSENCE"), lot("OIL")], {"ESSENCE": frozenset({"OIL"})}, LEVEL)
    assert (trial.arms, trial.has_control, trial.jars) == ((lot("OIL"),), True, 8)


def test_a_setting_and_a_lot_that_went_together_are_not_separated() -> None:
    lots = [observed(f"F{n}", True, "OIL", passes="1") for n in range(5)]
    lots += [observed(f"C{n}", False, passes="2") for n in range(5)]
    (suspect,) = judge(lots).named
    assert suspect.causes == (lot("OIL"), Cause(Sort.SETTING, "passes", "1"))


def test_what_only_the_clear_lots_had_is_named_as_missing() -> None:
    lots = [observed(f"F{n}", True, f"X{n}") for n in range(5)]
    lots += [observed(f"C{n}", False, "FINING") for n in range(5)]
    (suspect,) = judge(lots).named
    assert suspect.cause == lot("FINING", is_absent=True)
    assert suspect.table == Table(5, 0, 0, 5)


def test_what_goes_along_with_a_stronger_suspect_is_not_named() -> None:
    lots = [observed(f"F{n}", True, "OIL", "JAR" if n < 9 else "TUB") for n in range(10)]
    lots += [observed(f"C{n}", False, "JAR" if n < 1 else "TUB") for n in range(10)]
    found = judge(lots)
    assert [item.cause for item in found.named] == [lot("OIL")]
    jar = next(item for item in found.suspects if lot("JAR") in item.causes)
    assert jar.p_adjusted is not None
    assert jar.p_adjusted <= LEVEL
    assert jar.is_explained


def test_lots_of_one_batch_are_counted_once_beside() -> None:
    lots = [
        replace(observed(f"{name}{n}", name < "C", *(["OIL"] if name < "C" else [])), batch=name)
        for name in "ABCDE"
        for n in range(3)
    ]
    (suspect,) = judge(lots).named
    assert suspect.table == Table(6, 0, 0, 9)
    assert suspect.by_batch == Table(2, 0, 0, 3)


def test_what_differs_within_a_batch_or_is_the_batch_is_not_counted_by_batch() -> None:
    within = [
        replace(observed(f"{n}{bad}", bad, *(["OIL"] if bad else [])), batch=str(n))
        for n in range(6)
        for bad in (True, False)
    ]
    itself = [
        replace(observed(f"{name}{n}", name == "A", name), batch=name)
        for name in "ABC"
        for n in range(5)
    ]
    assert [item.by_batch for item in (*judge(within).named, *judge(itself).named)] == [None, None]


def test_two_causes_that_each_fail_lots_are_both_named() -> None:
    made = list(product((False, True), (False, True), range(12)))
    lots = [
        observed(
            f"L{n}",
            (oil or carbonate),
            *(["OIL"] if oil else []),
            *(["CARB"] if carbonate else []),
        )
        for n, (oil, carbonate, _) in enumerate(made)
    ]
    assert {item.cause for item in judge(lots).named} == {lot("OIL"), lot("CARB")}


def test_a_product_that_fails_more_is_no_reason_to_blame_what_only_it_is_made_of() -> None:
    """Of mint everything failed and of lemon nothing; within a product nothing differs."""
    lots = [observed(f"F{n}", True, "MINT", product="Mint syrup") for n in range(8)]
    lots += [observed(f"C{n}", False, "LEMON", product="Lemon syrup") for n in range(8)]
    lots += [observed("M", False, "MINT", product="Mint syrup")]
    found = judge(lots)
    assert found.conclusion is Conclusion.TOO_LITTLE
    assert (found.named, found.clear) == ((), ("M",))


@pytest.mark.parametrize(("elsewhere", "is_apart"), [(0, False), (1, False), (2, True)])
def test_what_other_products_had_without_harm_is_set_apart(elsewhere: int, is_apart: bool) -> None:
    """Five failed with both: 1/C(6, 1) is above the level, 1/C(7, 2) = 1/21 below it."""
    lots = [observed(f"F{n}", True, "OIL", "SPIRIT") for n in range(5)]
    lots += [observed(f"C{n}", False) for n in range(4)]
    lots += [observed(f"E{n}", False, "SPIRIT", product="Lemon") for n in range(elsewhere)]
    found = judge(lots)
    (suspect,) = found.named
    assert suspect.table == Table(5, 0, 0, 4)
    assert len(found.elsewhere) == elsewhere
    assert [(item.cause, item.clear_elsewhere, item.p) for item in suspect.set_apart] == (
        [(lot("SPIRIT"), 2, Fraction(1, 21))] if is_apart else []
    )
    assert suspect.not_separable_from == (() if is_apart else (lot("SPIRIT"),))
    assert found.conclusion is (Conclusion.NAMED if is_apart else Conclusion.TOGETHER)


def test_not_all_that_went_together_can_be_set_apart() -> None:
    lots = [observed(f"F{n}", True, "OIL", "SPIRIT") for n in range(5)]
    lots += [observed(f"C{n}", False) for n in range(4)]
    lots += [observed(f"E{n}", False, "OIL", "SPIRIT", product="Lemon") for n in range(5)]
    (suspect,) = judge(lots).named
    assert (suspect.causes, suspect.set_apart) == ((lot("OIL"), lot("SPIRIT")), ())


def test_strata_of_products_and_makers_are_pooled() -> None:
    lots = [
        observed(f"{maker}{n}{bad}", bad, *(["OIL"] if bad != (n == 0) else []), maker=maker)
        for maker in ("NM", "TP")
        for n in range(6)
        for bad in (True, False)
    ]
    (suspect,) = judge(lots).named
    assert [name for name, _ in suspect.strata] == ["Syrup, made by NM", "Syrup, made by TP"]
    assert suspect.pooled.odds is not None
    # (5 * 5 / 12) * 2 / ((1 * 1 / 12) * 2), by hand
    assert suspect.pooled.odds.ratio == pytest.approx(25)


@pytest.mark.parametrize(
    ("failed", "clear"), [(0, 5), (1, 30), (5, 0), (2, 2)], ids=["none", "one", "all", "few"]
)
def test_too_little_evidence_is_said_and_nothing_is_named(failed: int, clear: int) -> None:
    lots = [observed(f"F{n}", True, "OIL") for n in range(failed)]
    lots += [observed(f"C{n}", False) for n in range(clear)]
    found = judge(lots)
    assert found.conclusion is Conclusion.TOO_LITTLE
    assert (found.named, found.crossing) == ((), None)


def test_evidence_without_a_pattern_names_nothing() -> None:
    lots = [
        observed(f"L{n}", n % 2 == 0, "OIL" if n % 4 < 2 else "OTHER", pore=str(n % 3))
        for n in range(24)
    ]
    found = judge(lots)
    assert found.conclusion is Conclusion.NOTHING
    assert found.tested > 0


def test_the_level_is_data_of_the_call() -> None:
    lots = [observed(f"F{n}", True, "OIL") for n in range(5)]
    lots += [observed(f"C{n}", False) for n in range(4)]
    assert judge(lots, Fraction(1, 126)).named
    assert not judge(lots, Fraction(1, 127)).named


def test_in_seasons_of_noise_false_alarms_stay_below_the_level() -> None:
    """A thousand seasons of three sizes are played by `python -m tests.benchmarks.false_alarms`."""
    assert false_alarms(90, lots=24) / 90 <= LEVEL
