"""Suspects for machines: figures add up, none is infinite, and only a cause is named."""

import pytest

from ledger.science.statistics.suspects import Observed
from reports.json.causes.suspects import suspects_answer
from tests.reports.json.kept import check
from tests.reports.words.causes.suspicions import lots, suspicion
from tests.science.statistics.judged import in_turn


def test_figures_for_machines_add_up_and_have_no_infinity() -> None:
    plain = suspects_answer(suspicion(lots("A", "")))
    (one,) = plain.suspects
    assert one.failed_with + one.failed_without == len(plain.failed_codes)
    assert one.clear_with + one.clear_without == len(plain.comparable_codes)
    assert one.odds.ratio is one.odds.high is None
    assert (one.p, one.counted, one.is_named) == ("0.00126263", "run", True)


@pytest.mark.parametrize(
    ("observed", "verdict", "named", "factors"),
    [
        (in_turn("A", "", syrups=2), "cause", ["A"], ("A",)),
        (in_turn("A", "", each=2, syrups=3, gap=5), "lead", [], ("A",)),
        (lots("AB", ""), "inseparable", [], ("A", "B")),
        (lots("A", "A"), "too few", [], None),
    ],
    ids=["cause", "lead", "inseparable", "too few"],
)
def test_only_a_cause_is_named(
    observed: list[Observed], verdict: str, named: list[str], factors: tuple[str, ...] | None
) -> None:
    plain = suspects_answer(suspicion(observed))
    assert plain.verdict == verdict
    assert [item.lot for item in plain.suspects if item.is_named] == named
    assert [item.lot for item in plain.named] == named
    assert (plain.trial.factors if plain.trial else None) == factors


def test_every_figure_of_suspicions_is_the_kept_one() -> None:
    observed = (lots("A", ""), in_turn("A", "", each=2, syrups=3, gap=5), lots("AB", "A"))
    check("suspects", *(suspects_answer(suspicion(each)) for each in observed))
