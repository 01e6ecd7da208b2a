"""Files, folders and workbooks are opened as they are; what cannot be read is told."""

import re
import sys
from collections.abc import Iterator
from datetime import UTC, date, datetime, time
from pathlib import Path

import pytest
from openpyxl import Workbook

from ledger.errors import InputError, StorageError
from ledger.service.copies.intake import table_files
from ledger.service.copies.intake.table_files import cell_text, read_tables


def saved(book: Workbook, path: Path) -> Path:
    book.save(path)
    return path


def test_days_and_numbers_of_a_workbook_come_out_as_words(tmp_path: Path) -> None:
    book = Workbook()
    sheet = book.active
    sheet.title = "Chargen"
    sheet.append(["Charge", "Datum", "Uhr", "ml", "frei"])
    at = datetime(2026, 2, 3, 9, 30)  # noqa: DTZ001 - a cell has no zone
    sheet.append(["O 1", date(2026, 2, 3), at, 30.5, True])
    book.create_sheet("empty")
    (table,), found = read_tables(saved(book, tmp_path / "s.xlsx"))
    assert (table.file, table.name, found) == ("s.xlsx, sheet Chargen", "Chargen", [])
    assert table.lines[0].cells == (
        *("O 1", "2026-02-03 00:00:00", "2026-02-03 09:30:00", "30.5", "yes"),
    )


def test_merged_cells_and_formulas_never_reckoned_are_found(tmp_path: Path) -> None:
    book = Workbook()
    sheet = book.active
    sheet.append(["a", "b"])
    sheet.append(["1", "=A2*2"])
    sheet.append(["2", "3"])
    sheet.merge_cells("A2:A3")
    _, found = read_tables(saved(book, tmp_path / "s.xlsx"))
    assert [(each.what, each.todo) for each in found] == [
        ("The cells A2:A3 are merged.", "Undo the merging, and fill in each cell."),
        (
            "The cell B2 has a formula that was never reckoned.",
            "Open it, save it, hand it in.",
        ),
    ]


def test_what_is_no_workbook_is_found(tmp_path: Path) -> None:
    file = tmp_path / "s.xlsx"
    file.write_bytes(b"PK\x03\x04 and no more")
    tables, found = read_tables(file)
    assert (tables, len(found)) == ([], 1)
    assert (found[0].what, found[0].todo) == (
        "It cannot be read as a workbook: BadZipFile.",
        "Save it again as .xlsx, or its sheets as CSV.",
    )


def test_a_folder_without_tables_and_a_file_that_is_not_there_are_refused(tmp_path: Path) -> None:
    with pytest.raises(InputError) as raised:
        read_tables(tmp_path)
    assert raised.value.problems == (
        (f"The folder {tmp_path} holds no CSV file and no workbook.", "Name the right folder."),
    )
    with pytest.raises(StorageError, match="could not be read"):
        read_tables(tmp_path / "none.csv")


def test_a_folder_that_cannot_be_read_is_told_with_the_reason(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def denied(_folder: Path) -> Iterator[Path]:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "iterdir", denied)
    with pytest.raises(StorageError) as raised:
        read_tables(tmp_path)
    assert raised.value.problems == (
        (
            f"The folder {tmp_path} could not be read: Permission denied.",
            "Check its name and rights.",
        ),
    )


def test_a_workbook_that_unpacks_to_too_much_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(table_files, "MOST_UNPACKED", 100)
    file = saved(Workbook(), tmp_path / "s.xlsx")
    with pytest.raises(InputError) as raised:
        read_tables(file)
    (what, todo), *others = raised.value.problems
    assert re.fullmatch(r"The workbook s.xlsx unpacks to \d+ bytes; at most 100 are read\.", what)
    assert (todo, others) == ("Save its sheets as CSV.", [])


def test_without_openpyxl_a_workbook_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = saved(Workbook(), tmp_path / "s.xlsx")
    monkeypatch.setitem(sys.modules, "openpyxl", None)
    with pytest.raises(InputError) as raised:
        read_tables(file)
    assert raised.value.problems == (
        (
            "To read the workbook s.xlsx, pottle needs openpyxl.",
            "Install pottle[xlsx], or save each sheet as CSV and hand in their folder.",
        ),
    )


def test_a_file_of_more_than_fifty_megabytes_is_refused(tmp_path: Path) -> None:
    file = tmp_path / "much.csv"
    with file.open("wb") as much:
        much.truncate(50_000_001)
    with pytest.raises(InputError) as raised:
        read_tables(file)
    assert raised.value.problems == (
        (
            f"The file {file} is larger than 50000000 bytes.",
            "Part it into several files, and hand in one after the other.",
        ),
    )


def test_of_a_folder_what_ends_as_a_table_does_is_looked_into_by_name(tmp_path: Path) -> None:
    for name in ("b.TXT", "a.tsv", "d.CSV", "c.md", "e.pdf", "f"):
        (tmp_path / name).write_text("lot,amount\nO-1,3\n", encoding="utf-8")
    tables, found = read_tables(tmp_path)
    assert ([table.file for table in tables], found) == (["a.tsv", "b.TXT", "d.CSV"], [])


def test_a_cell_of_a_workbook_is_written_as_a_table_has_it() -> None:
    moment = datetime(2026, 2, 3, 4, 5, tzinfo=UTC).replace(tzinfo=None)
    told = [True, False, 0.1 + 0.2, date(2026, 2, 3), time(14, 30), moment, 7, "x"]
    assert [cell_text(value) for value in told] == [
        *("yes", "no", "0.3", "2026-02-03", "14:30", "2026-02-03 04:05:00", "7", "x"),
    ]
