"""Opening what a maker hands in: a CSV file, a folder of them, or a workbook.

Guarantees: every file is read whole or told of; a cell of a workbook comes out as its words, a day
as 2026-02-03. Refuses: files that are too large, workbooks that would fill the memory, merged
cells, and formulas that were never reckoned.
"""

from collections.abc import Iterator
from datetime import date, datetime, time
from io import BytesIO
from pathlib import Path
from typing import Any
from zipfile import BadZipFile, ZipFile

from ledger.domain.tables.dialect import Rows, read_table, table_of
from ledger.domain.tables.grid import Found, Table
from ledger.errors import InputError, StorageError
from ledger.text_files import bytes_of

MOST_BYTES = 50_000_000
"""How large a file may be."""
IN_PARTS = "Part it into several files, and hand in one after the other."
"""What to do with one that is larger."""
MOST_UNPACKED = 300_000_000
"""How large a workbook may be once it is unpacked, in bytes."""
WORKBOOKS = (".xlsx", ".xlsm")
"""How the names of workbooks end."""
TABLES = (".csv", ".tsv", ".txt", *WORKBOOKS)
"""How the names of files end that are looked into in a folder."""


def read_tables(path: Path) -> tuple[list[Table], list[Found]]:
    """Return all tables at a place, and all that is wrong with them as tables.

    Raises:
        InputError: There is no table there, or a file is too large.
        StorageError: It cannot be read.
    """
    tables: list[Table] = []
    found: list[Found] = []
    for file in _files(path):
        content = bytes_of(file, MOST_BYTES, IN_PARTS)
        if file.suffix.lower() in WORKBOOKS:
            for table, wrong in _workbook(file, content):
                tables += [table] if table else []
                found += wrong
        else:
            table, wrong = read_table(file.name, file.stem, content)
            tables += [table] if table else []
            found += wrong
    return tables, found


def _files(path: Path) -> list[Path]:
    try:
        if not path.is_dir():
            return [path]
        # In the order of their names, since a folder has none of its own.
        files = sorted(each for each in path.iterdir() if each.suffix.lower() in TABLES)
    except OSError as error:
        raise StorageError(
            f"The folder {path} could not be read: {error.strerror}.", "Check its name and rights."
        ) from error
    if not files:
        raise InputError(
            f"The folder {path} holds no CSV file and no workbook.", "Name the right folder."
        )
    return files


def _workbook(file: Path, content: bytes) -> Iterator[tuple[Table | None, list[Found]]]:
    try:
        from openpyxl import load_workbook
    except ImportError as error:
        raise InputError(
            f"To read the workbook {file.name}, pottle needs openpyxl.",
            "Install pottle[xlsx], or save each sheet as CSV and hand in their folder.",
        ) from error
    try:
        with ZipFile(BytesIO(content)) as packed:
            size = sum(part.file_size for part in packed.infolist())
        if size > MOST_UNPACKED:
            raise InputError(
                f"The workbook {file.name} unpacks to {size} bytes; at most {MOST_UNPACKED} are "
                "read.",
                "Save its sheets as CSV.",
            )
        reckoned = load_workbook(BytesIO(content), data_only=True)
        written = load_workbook(BytesIO(content))
    except InputError:
        raise
    except (BadZipFile, Exception) as error:
        what = f"It cannot be read as a workbook: {type(error).__name__}."
        todo = "Save it again as .xlsx, or its sheets as CSV."
        yield None, [Found(file.name, None, None, what, todo)]
        return
    for sheet in reckoned.worksheets:
        if sheet.max_row and any(True for _ in sheet.iter_rows(max_row=1)):
            yield _sheet(f"{file.name}, sheet {sheet.title}", sheet, written[sheet.title])


def _sheet(place: str, sheet: Any, written: Any) -> tuple[Table | None, list[Found]]:  # noqa: ANN401 - openpyxl's
    found = [
        Found(place, merged.min_row, None, f"The cells {merged.coord} are merged.", _UNMERGE)
        for merged in sheet.merged_cells.ranges
    ]
    rows: Rows = []
    for number, cells in enumerate(sheet.iter_rows(), 1):
        for cell in cells:
            formula = written.cell(cell.row, cell.column).value
            if cell.value is None and isinstance(formula, str) and formula.startswith("="):
                what = f"The cell {cell.coordinate} has a formula that was never reckoned."
                found.append(Found(place, number, None, what, "Open it, save it, hand it in."))
        rows.append((number, [cell_text(cell.value) for cell in cells]))
    table, wrong = table_of(place, sheet.title, rows, ("of a workbook",))
    # An empty sheet in a workbook is no fault: most new workbooks come with some.
    return (table, [*found, *wrong]) if table or not _is_empty(rows) else (None, [])


_UNMERGE = "Undo the merging, and fill in each cell."


def _is_empty(rows: Rows) -> bool:
    return not any(any(cells) for _, cells in rows)


def cell_text(value: object) -> str:
    """Return a cell of a workbook in words.

    >>> cell_text(30.0), cell_text(30.5), cell_text(datetime(2026, 2, 3, 14, 30)), cell_text(None)
    ('30', '30.5', '2026-02-03 14:30:00', '')
    """
    match value:
        case None:
            return ""
        case bool():
            return "yes" if value else "no"
        case float():
            # A spreadsheet keeps fifteen digits and shows no more.
            return format(value, ".15g")
        case datetime():
            return value.isoformat(sep=" ", timespec="seconds")
        case date():
            return value.isoformat()
        case time():
            return value.isoformat(timespec="minutes")
        case _:
            return " ".join(str(value).split())
