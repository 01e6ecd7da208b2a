"""The next step: what stands in the way of a release comes before it."""

import pytest

from ledger.domain.rules import Finding, Severity
from reports.words.desk.next_step import before_release

RELEASE = "pottle release OE-001-5"


@pytest.mark.parametrize(
    ("commands", "step"),
    [
        (("pottle check --entry 9",), "pottle check --entry 9"),
        ((None, "pottle hold OE-001-5", "pottle due"), "pottle hold OE-001-5"),
        ((None,), RELEASE),
    ],
)
def test_the_first_command_of_what_stands_in_the_way_comes_before_a_release(
    commands: tuple[str | None, ...], step: str
) -> None:
    found = [
        Finding(Severity.GATE, "release", "It is not done.", "See to it: pottle stock", command)
        for command in commands
    ]
    assert before_release(RELEASE, found) == step
    assert before_release("pottle stock", found) == "pottle stock"


def test_nothing_in_the_way_leaves_the_release() -> None:
    assert before_release(RELEASE, []) == RELEASE
