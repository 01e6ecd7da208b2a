"""The report, to the last character."""

from tests.kept.golden import check_golden
from tests.mutants.cases import outcomes
from tests.mutants.telling.report import report


def test_the_report_tells_survivors_and_scores() -> None:
    text = report(outcomes(), 23, 20260311)
    check_golden("mutants.txt", text)
    assert max(map(len, text.splitlines())) <= 80


def test_a_score_by_the_nearest_tests_alone_is_told_as_such() -> None:
    told = report(outcomes(), 23, 20260311, "the nearest tests alone")
    assert (
        "6 mutants of 23 places, seed 20260311, by the nearest tests alone: scores are at least so "
        "high"
    ) in told.splitlines()
