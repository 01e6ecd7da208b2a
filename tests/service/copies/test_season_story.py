"""The demo season tells of cloudy syrup: too few to tell, a lead, a trial, a cause, a recall."""

import pytest

from ledger.domain.entries import (
    Complaint,
    Look,
)
from ledger.errors import FindingError
from ledger.service.causes.compare import compare
from ledger.service.causes.outcome import JarState
from ledger.service.causes.redrawn import root_faults
from ledger.service.causes.suspects import suspects
from ledger.service.desk.book import Book, How
from ledger.service.lots.journal import entries_of_kind, journal
from ledger.service.lots.shares import traced
from ledger.service.lots.trace import Way, trace
from ledger.service.recall.standing import recall_of
from ledger.service.verdicts.judge import judge
from reports.words.lots.trace import describe, traced_lines
from reports.words.recall.standing import (
    accounted_line,
    balance_line,
    balance_rows,
    call_lines,
    course,
    lot_rows,
    lots_made,
    next_line,
)
from tests.demonstration import Demonstration
from tests.kept.golden import check_golden

CULPRIT = "oil-orange-2"
"""Its nickname, as the story of the season has it."""


def test_too_few_to_tell_comes_first_then_a_lead_then_the_trial_and_only_then_the_cause(
    season: tuple[Book, Demonstration],
) -> None:
    book, made = season
    culprit = made.played.codes[CULPRIT]
    assert [*dict.fromkeys(made.story)] == [
        ("judge", "too few", ()),
        ("plan", "lead", (culprit,)),
        ("judge", "cause", (culprit,)),
    ]
    # Of the syrups alone it is a lead to the end, and the trial of it is pointed at.
    suspicion = suspects(book, complaints=True)
    assert (suspicion.judgement.verdict, suspicion.tried_in) == ("lead", "cloudy orange")
    assert suspicion.judgement.lead is not None
    table = suspicion.judgement.lead.table
    assert (table.failed_without, table.clear_with) == (0, 0)
    assert (table.failed_with, table.clear_without) == (5, 4)


def test_the_jars_of_the_trial_are_as_drawn_and_were_looked_at_by_one_who_did_not_make_them(
    season: tuple[Book, Demonstration],
) -> None:
    book, made = season
    found = compare(book, "cloudy orange").outcome
    assert found is not None
    assert {jar.state for jar in found.jars} == {JarState.KEPT}
    assert len(found.jars) == 12
    assert not list(root_faults(book, found.planned))
    jars = {jar.planned.code for jar in found.jars}
    looks = [entry.draft for entry in entries_of_kind(book, Look) if entry.draft.lot in jars]
    assert len(looks) == 24
    assert {draft.by for draft in looks} == {"IN"}
    assert made.played.codes["evening-1/1"] == found.jars[0].planned.code


def test_the_culprit_is_behind_every_cloudy_bottle_and_no_clear_one(
    season: tuple[Book, Demonstration],
) -> None:
    book, made = season
    ahead = {
        node.brief.code
        for node in trace(book, made.played.codes[CULPRIT], back=False).nodes
        if node.way is Way.FORWARD and node.brief.lot_type == "packed"
    }
    complaints = [entry.draft for entry in entries_of_kind(book, Complaint)]
    assert ahead == {
        draft.lot
        for draft in complaints
        if isinstance(draft.facts, Complaint) and "cloudy" in draft.facts.symptom
    }


def test_a_recall_of_any_lot_accounts_for_every_bottle(season: tuple[Book, Demonstration]) -> None:
    book, made = season
    found = recall_of(book, made.played.codes[CULPRIT])
    assert len(found.packed) >= 5
    assert str(found.balance.accounted_percent) == "100.0"
    assert found.balance.made == sum(item.balance.made for item in found.packed)
    unknown = {call.name for call in found.to_call if not (call.known and call.known.phone)}
    assert unknown == {"Madeupton Saturday market, stall 7"}
    for code in made.played.codes.values():
        counted = {item.brief.code: item.balance for item in recall_of(book, code).packed}
        assert all(balance.accounted_percent >= 93 for balance in counted.values()), code


def test_the_trace_and_the_recall_of_the_culprit_read_as_the_kept_ones(
    season: tuple[Book, Demonstration],
) -> None:
    book, made = season
    code = made.played.codes[CULPRIT]
    found = traced(book, code)
    lines = [describe(found.trace.lot), *traced_lines(found, back=True, forward=True)]
    check_golden("build/trace_of_season.txt", "\n".join(lines) + "\n")
    drill = recall_of(book, code)
    heads, rows = balance_rows(drill)
    told = [
        *(lots_made(drill), *course(drill, drill=True)),
        *(" | ".join(row) for row in lot_rows(drill)),
        *(" | ".join(row) for row in (heads, *rows)),
        *(balance_line(drill), accounted_line(drill), *call_lines(drill)),
        next_line(drill, drill=True),
    ]
    check_golden("build/recall_of_season.txt", "\n".join(told) + "\n")


def test_a_release_of_the_essence_that_went_cloudy_is_refused_with_all_that_stands_in_its_way(
    season: tuple[Book, Demonstration],
) -> None:
    book, made = season
    before = len(journal(book).said)
    with pytest.raises(FindingError) as raised:
        judge(book, How(by="NM"), lot=made.played.codes["e-orange-4"], verdict="release")
    told = [what for what, _ in raised.value.problems]
    assert any("cloudy" in what for what in told)
    assert any("now held" in what for what in told)
    assert len(journal(book).said) == before
