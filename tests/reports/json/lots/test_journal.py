"""Entries of the journal, for machines."""

from ledger.domain.entries import Note
from ledger.service.lots.journal import Said, journal
from reports.json.lots.journal import journal_row
from tests.keeper import Keeper
from tests.kept.filled import bare, filled
from tests.path import Lots
from tests.reports.json.kept import check


def test_a_correction_says_what_it_corrects_and_why(walked: tuple[Keeper, Lots]) -> None:
    keeper, _ = walked
    (last,) = journal(keeper.book, last=1).said
    told = journal_row(last)
    assert (told.entry, told.corrects, told.corrected_by) == (36, 16, None)
    assert (told.title, told.says, told.reason) == ("added", "26 g of SOO-001-3", "misread")
    assert (told.happened, told.precision) == ("2026-03-02T09:40:00+00:00", "exact")
    assert (told.recorded_at, told.late) == ("2026-03-04T11:20:00+00:00", True)


def test_every_field_of_entries_is_the_kept_one(walked: tuple[Keeper, Lots]) -> None:
    keeper, _ = walked
    check("journal", *map(journal_row, journal(keeper.book, last=22).said[:3]))
    check("journal_last", *map(journal_row, journal(keeper.book, last=1).said))


def test_every_part_of_an_entry_stands_under_its_own_key() -> None:
    note = Note("It smells of peel.")
    answers = (journal_row(each(Said, facts=note)) for each in (filled, bare))
    check("journal_filled", *answers)
