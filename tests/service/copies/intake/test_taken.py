"""A row that was taken is known again by what it says, and found where it says something else."""

from ledger.domain.tables.grid import Found
from ledger.service.copies.intake.row_acts import Act
from ledger.service.copies.intake.taken import Taken, changed_rows, sheet_of, taken_rows
from tests.keeper import Keeper

OLD, NEW = "0" * 16, "f" * 16


def act(row: str = OLD, line: int = 5, file: str = "may.csv", **words: str) -> Act:
    return Act("note", words, {}, file, line, row, ("2026-03-02", 0, line, 0))


def test_an_entry_names_the_paper_and_the_row_it_was_copied_from() -> None:
    """By the row's own paper before the one that is asked for; a file's name has no comma there."""
    row = f"may.csv line 5, row {OLD}"
    assert sheet_of(act(), None) == row
    assert sheet_of(act(), "B-7") == f"B-7, {row}"
    assert sheet_of(act(sheet="B-8"), "B-7") == f"B-8, {row}"
    assert sheet_of(act(file="may, june.csv"), None) == f"may june.csv line 5, row {OLD}"


TAKEN = {OLD: Taken(7, "may.csv", 5)}


def test_a_row_that_was_taken_in_other_words_is_found_with_its_entry() -> None:
    assert list(changed_rows(TAKEN, [act(NEW), act(NEW)])) == [
        Found(
            "may.csv",
            5,
            None,
            "It was taken before in other words, from entry 7 on.",
            "Put the row back as it was and correct what is wrong with: pottle correct 7; or "
            "strike out what was taken.",
        )
    ]
    (found,) = changed_rows({OLD: Taken(7, "a b.csv", 5)}, [act(NEW, file="a, b.csv")])
    assert found.file == "a, b.csv"


def test_a_row_that_moved_or_is_new_or_of_another_file_is_as_it_was() -> None:
    """Where it stood another may stand now, as long as the book has that one too."""
    assert list(changed_rows(TAKEN, [act(OLD)])) == []
    assert list(changed_rows(TAKEN, [act(OLD, 9), act(NEW, 5)])) == []
    assert list(changed_rows(TAKEN, [act(NEW, 6)])) == []
    assert list(changed_rows(TAKEN, [act(NEW, file="june.csv")])) == []
    both = {**TAKEN, NEW: Taken(9, "may.csv", 6)}
    assert list(changed_rows(both, [act(NEW, 5)])) == []


def test_the_rows_of_a_book_are_known_by_their_first_entry_whatever_paper_they_name(
    sqlite_keeper: Keeper,
) -> None:
    sheets = (
        f"may.csv line 12, row {OLD}",
        f"B-7, may.csv line 12, row {OLD}",
        f"B, 8, a line 3.csv line 4, row {NEW}",
        f"may.csv line 12, row {OLD[1:]}",
        "B-7",
    )
    first, *_ = (
        sqlite_keeper.do("note", text=f"Note {place}.", sheet=sheet).seq
        for place, sheet in enumerate(sheets)
    )
    with sqlite_keeper.reading() as connection:
        assert taken_rows(connection) == {
            OLD: Taken(first, "may.csv", 12),
            NEW: Taken(first + 2, "a line 3.csv", 4),
        }
