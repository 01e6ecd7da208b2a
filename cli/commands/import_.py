"""The command `import`: take tables into the book, or make a new one of an export."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Force, Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def take_in(
    call: Call,
    path: Annotated[
        Path | None,
        typer.Argument(help="A CSV file, a folder of them, or a workbook: added to the book."),
    ] = None,
    map_: Annotated[
        Text, typer.Option("--map", metavar="FILE", help="What its columns mean; a file or name.")
    ] = None,
    dry_run: Annotated[
        bool, typer.Option("--dry-run", help="Say all that is wrong, and record nothing.")
    ] = False,
    dates: Annotated[
        Text, typer.Option(metavar="ORDER", help="How days are written: dmy, mdy or ymd.")
    ] = None,
    decimal: Annotated[
        Text, typer.Option(metavar="SIGN", help="What parts decimals: a comma or a point.")
    ] = None,
    like: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Write a map that its headings propose, and stop."),
    ] = None,
    force: Force = False,
    book: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="A whole book, as pottle export wrote it: a new book."),
    ] = None,
) -> None:
    """Take a spreadsheet into the book, or make a new book of an export."""
    from cli.screens.copies.copied import take_in_book
    from cli.screens.copies.take_in import propose, take_tables
    from ledger.errors import InputError

    if book is not None and path is None:
        take_in_book(call, book)
    elif path is None or book is not None:
        raise InputError(
            "Either tables are taken into the book, or a new book is made of an export.",
            "Give the place of the tables, or a book with --book.",
        )
    elif like is not None:
        propose(call, path, like, force=force)
    else:
        take_tables(call, path, map_, dates, decimal, is_rehearsal=dry_run)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.copies.copied import CopiedAnswer
    from reports.json.copies.taken_in import TakenInAnswer
    from reports.json.kit.answer import File

    return (TakenInAnswer, File, CopiedAnswer)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command("import", cls=Verb)(writes(take_in, answers))
