"""Writing every table of the book as CSV, with what its columns mean.

Guarantees: all files stand whole before the first has its name; they are private to their owner.
"""

from pathlib import Path

from cli.kit.call import Call
from cli.kit.tables import print_json, print_lines
from cli.screens.recall.pack import write_pack
from ledger.errors import StorageError
from ledger.service.copies.export_tables import export_tables
from reports.json.kit.answer import File
from reports.kit.format import plural
from reports.kit.tables import spreadsheet
from reports.words.copies.code_list import code_list, columns_list, table_sheet


def write_tables(call: Call, folder: Path, *, force: bool) -> None:
    """Write every table into a folder."""
    _check(folder, force=force)
    found = export_tables(call.book())
    sheets = {f"{name}.csv": table_sheet(columns, rows) for name, columns, rows in found.tables}
    sheets |= {"columns.csv": columns_list(found.meanings), "codes.csv": code_list(found.meanings)}
    files = {name: spreadsheet(sheet, name) for name, sheet in sheets.items()}
    files["seal.txt"] = "".join(f"{line}\n" for line in found.seal.lines).encode()
    write_pack(files, folder, force=force)
    if call.json:
        print_json(File(str(folder)))
    else:
        tables = plural(len(found.tables), "table")
        told = f"{tables} of {plural(found.seal.entries, 'entry', 'entries')} are in {folder}."
        more = "columns.csv says what each column means, codes.csv what may stand in it."
        print_lines([told, more, *found.seal.lines])


def _check(folder: Path, *, force: bool) -> None:
    if folder.exists() and not folder.is_dir():
        raise StorageError(f"{folder} is a file, not a folder.", "Give another folder with --csv.")
    if not folder.parent.is_dir():
        raise StorageError(
            f"There is no folder {folder.parent}.", "Make it first, or give another with --csv."
        )
    if folder.is_dir() and any(folder.iterdir()) and not force:
        raise StorageError(
            f"The folder {folder} is not empty; it was left as it is.",
            "Give another folder with --csv, or --force to write over what is there.",
        )
