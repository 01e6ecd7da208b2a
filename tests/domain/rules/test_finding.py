"""All that is wrong with one entry is told at once, family by family."""

from inspect import signature
from types import ModuleType

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.entries import Add, Bottle, Draft, Filter, Judge, MakeUp, Move, Rest, Strike
from ledger.domain.entries.choices import Verdict
from ledger.domain.lots.scene import Scene
from ledger.domain.rules import FAMILIES, Finding, Severity, findings
from ledger.domain.rules.always import batch as making
from ledger.domain.rules.always import (
    cases,
    clocks,
    genealogy,
    gs1_numbers,
    labels,
    names,
    parties,
    status,
    times,
    verdicts,
)
from ledger.domain.rules.always import corrections as keeping
from ledger.domain.rules.always import on_hand as amounts
from ledger.domain.rules.finding import remark
from ledger.domain.rules.formula import acts as following_steps
from ledger.domain.rules.formula import lines as following_amounts
from ledger.domain.rules.formula import version as following
from ledger.domain.rules.release import barriers as release
from ledger.domain.rules.release import clarity as gate
from ledger.domain.rules.release import clearance, declared, done
from ledger.domain.rules.release import given as asked
from ledger.domain.rules.usual import handling as usual_handling
from ledger.domain.rules.usual import harm as usual_harm
from ledger.domain.rules.usual import measures as usual_measures
from ledger.domain.rules.usual import readings as usual_readings
from ledger.domain.rules.usual import substances as usual_substances
from tests.domain.builders import at, draft, grams, lot, make, ml, packed, scene, when

SIGNATURES = {("draft", "scene"), ("draft", "_scene")}
"""By what a rule is known among the functions of its module."""
HELD = lot("E-2", make(Judge, verdict=Verdict.HOLD), on_hand=10_000)


def test_the_families_are_told_in_their_order() -> None:
    told = (
        names,
        parties,
        clocks,
        times,
        genealogy,
        amounts,
        labels,
        cases,
        gs1_numbers,
        making,
        status,
        verdicts,
        following,
        following_amounts,
        following_steps,
        usual_measures,
        usual_handling,
        usual_substances,
        usual_harm,
        usual_readings,
        release,
        done,
        asked,
        gate,
        clearance,
        declared,
    )
    assert (*told, keeping) == FAMILIES


def test_everything_wrong_with_one_entry_is_told_at_once() -> None:
    told = draft(
        make(MakeUp, source="E-2", volume=ml(400)),
        happened=when(at(7, day=1)),
        by="XY",
        corrects=5,
    )
    around = scene(lot(), HELD, made_from_lot=frozenset({"E-2"}))
    assert [finding.what for finding in findings(told, around)] == [
        "The initials XY are not in the book; it knows AB, CD.",
        "E-1 was not there on 2026-03-01 07:00: the book has it only from 2026-03-01 08:00.",
        "E-2 was not there on 2026-03-01 07:00: the book has it only from 2026-03-01 08:00.",
        "E-2 was made from E-1, so it cannot go into E-1: a lot would contain itself.",
        "20 mL is more than is there of E-2: the book says 10 mL.",
        "E-1 holds 450 mL already, so it cannot be made up to 400 mL.",
        "E-2 is on hold.",
        "There is no entry 5 in the book.",
        "Entry 5 cannot be changed without a reason.",
    ]


def test_a_release_is_told_before_what_is_wrong_with_its_correction() -> None:
    found = findings(draft(make(Judge), corrects=5), scene(lot()))
    assert [(finding.severity, finding.rule) for finding in found] == [
        (Severity.GATE, "release"),
        (Severity.GATE, "release"),
        (Severity.REMARK, "self-released"),
        (Severity.IMPOSSIBLE, "correction"),
        (Severity.REASON, "correction"),
    ]


DRAFTS = st.builds(
    draft,
    st.sampled_from(
        [
            make(Add, source="E-2", amount=ml(800)),
            make(Add, source="E-1", amount=grams(1)),
            make(Filter, volume_out=ml(900)),
            make(Move),
            make(Move, party=None),
            make(Bottle, drawn=grams(1)),
            make(Judge),
            make(Rest, started_at=at(9), ended_at=at(8)),
            make(Strike),
        ]
    ),
    by=st.sampled_from([None, "AB", "XY"]),
    happened=st.sampled_from([when(), when(at(1, day=1)), when(at(13))]),
    corrects=st.sampled_from([None, 5]),
)
LOTS = st.sampled_from([lot(), lot(on_hand=0), packed(), HELD])


@given(told=DRAFTS, around=st.builds(scene, LOTS, LOTS))
def test_no_family_hides_what_another_finds(told: Draft, around: Scene) -> None:
    expected: list[Finding] = []
    for family in FAMILIES:
        for rule in family.RULES:
            expected.extend(rule(told, around))
    found = findings(told, around)
    assert list(found) == expected


@given(told=DRAFTS, around=st.builds(scene, LOTS, LOTS))
def test_every_finding_is_a_whole_sentence_with_a_next_step_or_a_remark(
    told: Draft, around: Scene
) -> None:
    for finding in findings(told, around):
        assert finding.what.endswith(".")
        assert finding.what[0].isupper() or finding.what[0].isdigit()
        assert "None" not in finding.what + finding.todo
        assert finding.todo or finding.severity is Severity.REMARK


@pytest.mark.parametrize("family", FAMILIES, ids=lambda family: str(family.__name__))
def test_every_rule_of_a_family_is_run(family: ModuleType) -> None:
    public = [item for name, item in vars(family).items() if not name.startswith("_")]
    own = [item for item in public if getattr(item, "__module__", "") == family.__name__]
    rules = {item for item in own if tuple(signature(item).parameters) in SIGNATURES}
    assert rules == set(family.RULES)


def test_a_proposed_command_gets_the_number_of_the_entry_and_no_jar_of_that_name_does() -> None:
    todo = 'pottle clean "ENTRY jar"; else: pottle correct ENTRY --set medium=paper'
    assert remark("medium", "ENTRY jar is not clean.", todo).told_of(7) == (
        "ENTRY jar is not clean.",
        'pottle clean "ENTRY jar"; else: pottle correct 7 --set medium=paper',
    )
