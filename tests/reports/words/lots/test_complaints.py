"""Complaints in a list: what is open, and what became of the others."""

from ledger.service.lots.complaints import complaints
from reports.words.lots import complaints as module
from reports.words.lots.complaints import complaint_cells
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.path import walk_main_path


def test_each_complaint_says_how_far_it_is(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    packed = walk_main_path(keeper).packed
    first = complaints(keeper.book)[0].number

    def became() -> str:
        return complaint_cells(complaints(keeper.book)[0])[-1]

    assert complaint_cells(complaints(keeper.book)[0])[2:5] == [packed, "not named", "cloudy"]
    assert became() == "open, answer by 2026-03-11"
    keeper.do("answer", complaint=str(first), outcome="held")
    assert became() == "held, nobody told yet"
    keeper.do("answer", complaint=str(first), outcome="not-ours", closed="yes")
    assert became() == "not ours, closed, nobody told"
    keeper.do("answer", complaint=str(first), outcome="explained", told_by="AB")
    assert became() == "explained, told 2026-03-04 by AB"


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
