"""Complaints with what became of them, in a new book and in an old one."""

from ledger.domain.entries import Complaint
from ledger.service.lots.complaints import complaints
from ledger.service.lots.due import Waits, due
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
