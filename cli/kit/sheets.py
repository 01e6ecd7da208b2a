"""Lists as files for a spreadsheet, by the option that all lists have.

Guarantees: the place is looked at before the book is read; what is there stays unless asked.
"""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from cli.kit.call import Call

if TYPE_CHECKING:
    from reports.kit.tables import Sheet

Csv = Annotated[
    Path | None,
    typer.Option("--csv", metavar="FILE", help="Spreadsheet to write it to: .csv, or .xlsx."),
]
OTHER_CSV = "Give another name with --csv, or --force to write over it."


def check_sheet(out: Path | None, *, force: bool) -> None:
    """Make sure that a spreadsheet may be written at a place, if one is asked for."""
    from cli.kit.files import check_place

    if out is not None:
        check_place(out, force=force, instead=OTHER_CSV)


def put_sheet(call: Call, sheet: "Sheet", out: Path, *, force: bool) -> None:
    """Write a table to its file and say so; machines are told by the list itself."""
    from cli.kit.files import write
    from cli.kit.tables import print_lines
    from reports.kit.format import plural
    from reports.kit.tables import spreadsheet

    write(out, spreadsheet(sheet, out.name), force=force, instead=OTHER_CSV)
    if not call.json:
        print_lines([f"{plural(len(sheet.rows), 'row')} under a heading: {out}"])
