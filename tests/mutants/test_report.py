"""The report, to the last character."""

from tests.golden import check_golden
from tests.mutants.cases import outcomes
from tests.mutants.report import report


def test_the_report_tells_survivors_and_scores() -> None:
    text = report(outcomes(), 23, 20260311)
    check_golden("mutants.txt", text)
    assert max(map(len, text.splitlines())) <= 80
