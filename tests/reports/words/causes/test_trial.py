"""A planned trial in words: how large it is and why, and what it came to."""

from fractions import Fraction

import pytest
from msgspec.structs import replace

from ledger.domain.entries.trials import Decides, Evening
from ledger.domain.evidence.draws import mark, seed_of
from ledger.science.statistics.power import Size
from ledger.science.statistics.randomisation import Shown, Tried
from ledger.service.causes.outcome import JarState
from reports.words.causes import trial as module
from reports.words.causes.trial import outcome_lines, plan_lines, proved_lines
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said
from tests.planned import PLAN
from tests.reports.words.causes.plans import NAMES, THREE, outcome, planned


def test_plans_read_as_the_kept_ones() -> None:
    half = replace(THREE, evenings=(Evening(4),), decides=Decides.NTU)
    second = replace(PLAN, level_mpct=2500, fails_mpct=93_460, else_mpct=7000)
    told = [
        line
        for found in (planned(PLAN), planned(THREE), planned(half), planned(second, PLAN))
        for line in (*plan_lines(found, NAMES), "")
    ]
    check_golden("trial_plan.txt", "\n".join(told))


def test_outcomes_read_as_the_kept_ones() -> None:
    lost = {
        2: (JarState.NOT_SEEN, ""),
        3: (JarState.CHANGED, "SOO-002-1 is in it"),
        **dict.fromkeys(range(11, 17), (JarState.NOT_BEGUN, "")),
    }
    found = planned(THREE)
    every = outcome(found)
    shown = tuple(
        Tried(item, Fraction(1, 30), Fraction(1, 10), Fraction(1, 70))
        for item in (Shown.LEAD, Shown.INSEPARABLE, Shown.TOO_FEW)
    )
    by_ntu = planned(replace(PLAN, decides=Decides.NTU, level_mpct=2500), PLAN)
    told = [
        line
        for item in (
            replace(every, planned=replace(found, is_struck=True)),
            every,
            outcome(found, lost),
            replace(every, tried=shown),
            outcome(by_ntu),
        )
        for line in (*outcome_lines(item, NAMES), "")
    ]
    check_golden("trial_outcome.txt", "\n".join(told))


def test_four_jars_that_do_not_count_are_told_and_a_fifth_only_as_more() -> None:
    found = planned(THREE)
    marks = [jar.number for jar in found.jars]
    for many, more in ((4, ""), (5, " and more")):
        lost = dict.fromkeys(marks[:many], (JarState.NOT_SEEN, ""))
        (line,) = (line for line in outcome_lines(outcome(found, lost), NAMES) if "Counted" in line)
        four = ", ".join(mark(jar.code) for jar in found.jars[:4])
        assert line == (
            f"Counted against every accusation: {many} jars {JarState.NOT_SEEN} ({four}{more})."
        )


def test_what_other_sizes_would_do_is_told_in_whole_trials_of_a_hundred(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Eight jars of one evening are told of where a plan has more, and a unit no more than them."""
    monkeypatch.setattr(module, "size_of", lambda _plan, _by: Size((2, 2), 1.0))
    monkeypatch.setattr(module, "chance_of", lambda *_, **__: 1.0)
    saved = "By NTU 4 jars would do as much (100 %)."
    screened = "8 jars would screen, and find it in 100 of 100 trials."
    for factors, jars, told in (
        (1, 8, [saved]),
        (1, 10, [saved, screened]),
        (4, 16, [saved, screened]),
    ):
        plan = replace(PLAN, factors=PLAN.factors * factors, evenings=(Evening(jars),))
        assert list(module._other_sizes(plan)) == told


def test_how_the_draw_of_a_plan_is_repeated_is_told_with_its_seed() -> None:
    root = "0a" * 32
    assert proved_lines(planned(PLAN)) == [
        f"Entry 41 holds the root that the book had before it: {root} of 11 entries.",
        "The seed is SHA-256 of that root, the question and the sizes of the evenings: "
        f"{seed_of(PLAN).hex()}.",
        "Order and marks follow from the seed, as pottle guide machines says:",
    ]


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module, "plan_lines", "size_of")


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
