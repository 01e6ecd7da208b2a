"""Complaints with what became of them, in a new book and in an old one."""

from ledger.domain.entries import Answer, Complaint
from ledger.service.lots.complaints import complaints, is_closed
from ledger.service.lots.due import Waits, due
from tests.domain.builders import make
from tests.keeper import Keeper
from tests.path import Lots


def test_an_old_complaint_is_open_and_not_due(walked: tuple[Keeper, Lots]) -> None:
    """Books of before there were answers set no day for one."""
    keeper, lots = walked
    before = len(complaints(keeper.book))
    keeper.record(Complaint("cloudy", "Quay Bar"), lots.packed)
    found = complaints(keeper.book)
    assert (len(found), found[-1].is_open) == (before + 1, True)
    waiting = [item.number for item in due(keeper.book).items if item.waits is Waits.ANSWER]
    assert found[-1].number not in waiting


def test_an_open_complaint_is_due_in_a_week_until_it_is_answered(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    made = keeper.do("complain", lot=lots.packed, symptom="ring", party="Quay Bar")
    told = {item.number: item for item in due(keeper.book).items if item.waits is Waits.ANSWER}
    assert (told[made.seq].about, str(told[made.seq].at)) == (
        "ring, from Quay Bar",
        "2026-03-16 23:59:00+00:00",
    )
    keeper.do("answer", complaint=str(made.seq), outcome="replaced", told_by="AB")
    assert made.seq not in [item.number for item in due(keeper.book).items]


def test_a_complaint_is_closed_once_the_customer_was_told_or_where_it_is_said() -> None:
    told = [
        is_closed(make(Answer, told_by=told_by, is_closed=closed))
        for told_by in (None, "AB")
        for closed in (None, False, True)
    ]
    assert told == [False, False, True, True, False, True]


def test_of_several_answers_the_last_by_when_it_happened_counts_also_for_one_that_was_corrected(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    made = keeper.do("complain", lot=lots.packed, symptom="ring", answer_days="3")
    mend = {"changes": "symptom=flat", "because": "misread"}
    keeper.do("correct", entry=str(made.seq), **mend)
    late = keeper.do("answer", complaint=str(made.seq), outcome="replaced", told_by="AB")
    why = {"because": "noted late", "at": "2026-03-09 09:06"}
    keeper.do("answer", complaint=str(made.seq), outcome="explained", **why)
    first, found = complaints(keeper.book)
    assert (first.answer, first.is_open, first.brief) == (None, True, "cloudy")
    assert (found.number, found.brief, found.is_open) == (made.seq, "flat", False)
    assert found.lot.code == lots.packed
    assert found.answer is not None
    assert found.answer.seq == late.seq
    assert str(found.answer_by) == "2026-03-12"
