"""What stands in the way of an entry is raised as the one error that says what is to be done."""

import pytest

from ledger.domain.rules import Finding, Severity
from ledger.errors import FindingError, LedgerError, ReasonNeededError, RefusedError
from ledger.service.desk.stops import departs, stop

S = Severity


def found(*severities: Severity) -> list[Finding]:
    return [Finding(one, "rule", f"It is {one.name}.", "Do it.") for one in severities]


def said(*severities: Severity) -> str:
    return " ".join(f"It is {one.name}. Do it." for one in severities)


@pytest.mark.parametrize(
    ("severities", "reason", "insists", "error", "told"),
    [
        ([S.REMARK], None, False, None, []),
        ([S.REASON], None, False, ReasonNeededError, [S.REASON]),
        ([S.ASK], None, False, ReasonNeededError, [S.ASK]),
        ([S.WHY], None, False, ReasonNeededError, [S.WHY]),
        ([S.REASON, S.WHY, S.ASK], None, False, ReasonNeededError, [S.WHY, S.REASON, S.ASK]),
        ([S.REASON, S.WHY, S.ASK], "so", False, None, []),
        ([S.GATE], None, False, FindingError, [S.GATE]),
        ([S.GATE], "so", False, None, []),
        ([S.GATE, S.WHY], "so", False, FindingError, [S.GATE]),
        ([S.GATE, S.WHY], "so", True, None, []),
        ([S.GATE, S.WHY], None, True, FindingError, [S.GATE, S.WHY]),
        ([S.IMPOSSIBLE], "so", True, RefusedError, [S.IMPOSSIBLE]),
        ([S.ASK, S.GATE, S.IMPOSSIBLE], None, False, RefusedError, [S.IMPOSSIBLE, S.GATE, S.ASK]),
        ([S.ASK, S.GATE, S.IMPOSSIBLE], "so", False, RefusedError, [S.IMPOSSIBLE, S.GATE]),
    ],
)
def test_all_that_stands_in_the_way_is_told_at_once(
    severities: list[Severity],
    reason: str | None,
    insists: bool,
    error: type[LedgerError] | None,
    told: list[Severity],
) -> None:
    raised: LedgerError | None = None
    try:
        stop(found(*severities), reason, insists=insists)
    except LedgerError as stopped:
        raised = stopped
    assert type(raised) is (error or type(None))
    assert str(raised or "") == said(*told)


def test_a_deviation_is_recorded_of_what_should_not_have_happened() -> None:
    assert [one for one in Severity if departs(*found(one))] == [S.REASON, S.GATE]
