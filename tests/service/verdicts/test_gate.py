"""What stands in the way of a release is asked before the release is."""

import pytest

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Formula
from ledger.domain.entries.choices import LookedAt, ProductKind
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.rules import Finding, Severity
from ledger.domain.rules.release.barriers import stands_in_the_way
from ledger.errors import FindingError
from ledger.service.verdicts.gate import in_the_way
from reports.words.desk.next_step import before_release
from tests.keeper import Keeper
from tests.path import Lots

RELEASE = "pottle release OE-001-5"
STEPS = (FormulaStep("look", looked_at=LookedAt.AS_POURED, dilution="1:7"), FormulaStep("bottle"))


def test_what_stands_in_the_way_is_what_a_release_is_refused_for(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    basis = parse_quantity("1L")
    keeper.record(Formula("plain", 1, "Plain essence", ProductKind.ESSENCE, basis, steps=STEPS))
    code = keeper.opens("start", formula="plain", target="300mL")
    keeper.do("add", lot=code, source=lots.spirit, amount="300mL")
    keeper.do("look", lot=code, grade="bright")
    before, found = len(keeper.entries()), in_the_way(keeper.book, code)
    assert len(keeper.entries()) == before
    assert [finding.todo for finding in found] == [
        f"Finish it with what came out: pottle finish {code} VOLUME",
        f"Look at it: pottle look {code} GRADE --of as-poured --dilution 1:7",
    ]
    with pytest.raises(FindingError) as raised:
        keeper.do("judge", lot=code, verdict="release")
    assert raised.value.problems == tuple((finding.what, finding.todo) for finding in found)
    keeper.do("finish", lot=code, volume="300mL")
    keeper.do("look", lot=code, grade="bright", of="as-poured", dilution="1:7")
    assert in_the_way(keeper.book, code) == ()


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


def test_the_sentence_of_what_to_do_is_written_from_its_command() -> None:
    found = stands_in_the_way("It was not looked at.", "Look at it", "pottle look A GRADE")
    assert (found.todo, found.command) == ("Look at it: pottle look A GRADE", "pottle look A GRADE")
    told = stands_in_the_way("It is rejected.", "Say why with --because.")
    assert (told.todo, told.command) == ("Say why with --because.", None)


def test_nothing_in_the_way_leaves_the_release() -> None:
    assert before_release(RELEASE, []) == RELEASE
