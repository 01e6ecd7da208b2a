"""One act at the desk: every entry keeps who made it, when and where it was told."""

from typing import Any

import pytest

from ledger.domain.entries import Draft, Judge
from ledger.domain.entries.choices import Verdict
from ledger.errors import FindingError, InputError, RefusedError
from ledger.service.desk.act import at_desk
from ledger.service.desk.book import How
from tests.keeper import Keeper
from tests.service.cases import Problem


def test_an_entry_keeps_who_when_and_from_where(bench: Keeper) -> None:
    bench.by = " ab "
    made = bench.do("note", text="Copied.", at="2026-03-08 17:00", sheet="14")
    draft = made.entry.draft
    assert (draft.by, str(draft.origin), draft.sheet) == ("AB", "paper", "14")
    assert (f"{draft.happened.at:%F %T}", draft.happened.offset_min) == ("2026-03-08 17:00:00", 0)
    assert (f"{made.entry.recorded_at:%F %T}", made.entry.is_late) == ("2026-03-09 09:05:00", False)


@pytest.mark.parametrize(
    ("by", "problem"),
    [
        (
            None,
            (
                "This entry does not say who made it.",
                "Give your initials with --by or set POTTLE_BY.",
            ),
        ),
        (
            "zz",
            (
                "The initials ZZ are not in the book; it knows AB.",
                'Add the person with: pottle person add ZZ "FULL NAME"',
            ),
        ),
    ],
    ids=["nobody", "a stranger"],
)
def test_nobody_unknown_writes(by: str | None, problem: Problem, bench: Keeper) -> None:
    bench.by = by
    with pytest.raises(RefusedError) as raised:
        bench.do("note", text="Anonymous.")
    assert raised.value.problems == (problem,)


@pytest.mark.parametrize(("word", "what"), [("sheet", "sheet number"), ("because", "reason")])
def test_a_sheet_or_reason_that_is_too_long_is_refused(word: str, what: str, bench: Keeper) -> None:
    told: dict[str, Any] = {word: "x" * 2001}
    with pytest.raises(InputError) as raised:
        bench.do("note", text="Long.", **told)
    assert raised.value.problems == (
        (
            f"The {what} has 2001 characters; at most 2000 are kept.",
            "Say it in fewer words, or in several notes.",
        ),
    )


def test_a_lot_has_the_code_that_is_asked_for_in_the_letters_of_codes_or_the_books_next(
    bench: Keeper,
) -> None:
    assert bench.opens("receive", material="spirit", amount="1L", code=" mine-7 ") == "MINE-7"
    assert bench.opens("receive", material="spirit", amount="1L").startswith("NS-002-")
    with pytest.raises(RefusedError) as raised:
        bench.do("receive", material="spirit", amount="1L", code="Mine-7")
    assert raised.value.problems == (
        (
            "The code MINE-7 belongs to a lot already.",
            "Give another code, or leave --code out and the book makes one.",
        ),
    )


def test_why_a_hold_ends_is_no_reason_for_what_else_is_in_the_way_unless_it_is_insisted(
    bench: Keeper,
) -> None:
    """A batch that was never looked at, and was held."""
    bench.do("judge", lot="OE-001-5", verdict="hold", because="to see")
    how = How("AB", because="it smells fine")
    with pytest.raises(FindingError), at_desk(bench.book, how) as desk:
        desk.record(Judge(Verdict.RELEASE), "OE-001-5")
    with pytest.raises(FindingError), at_desk(bench.book, how) as desk:
        desk.append(Draft(Judge(Verdict.RELEASE), "OE-001-5", desk.happened, "AB", reason="Fine."))
    with at_desk(bench.book, how) as desk:
        done = desk.record(Judge(Verdict.RELEASE), "OE-001-5", insists=True)
    assert done.entry.draft.reason == "it smells fine"
    assert {each.facts.about for each in done.deviations} == {done.seq}
    told = {(each.draft.lot, each.draft.by, each.draft.reason) for each in done.deviations}
    assert told == {("OE-001-5", "AB", "it smells fine")}
    assert desk.numbers == [done.seq, *(each.seq for each in done.deviations)]


def test_where_it_comes_from_is_the_bench_or_the_paper_of_a_sheet_or_as_it_is_said(
    bench: Keeper,
) -> None:
    told = [
        str(bench.do("note", text="Quiet.", **how).entry.draft.origin)
        for how in ({}, {"sheet": "9"}, {"sheet": "9", "origin": "memory"}, {"origin": "paper"})
    ]
    assert told == ["bench", "paper", "memory", "paper"]
