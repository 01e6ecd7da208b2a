"""The command `export`: the book as lines or tables, or a period as key data or events."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Force, Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def export(
    call: Call,
    file: Annotated[
        Path | None, typer.Argument(help="File to write, as book.jsonl: any place can import it.")
    ] = None,
    csv: Annotated[
        Path | None,
        typer.Option("--csv", metavar="DIR", help="Folder for every table as CSV, explained."),
    ] = None,
    key_data: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Spreadsheet of what came, was made and went out."),
    ] = None,
    epcis: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Events of EPCIS 2.0 for a trading partner's programs."),
    ] = None,
    first: Annotated[
        Text, typer.Option("--from", help="Key data or events of this day and later.")
    ] = None,
    last: Annotated[
        Text, typer.Option("--to", help="Key data or events of this day and before.")
    ] = None,
    force: Force = False,
) -> None:
    """Write the book as lines that any place can import, as tables, key data or events."""
    from cli.screens.copies.copied import write_export
    from cli.screens.copies.tables import write_tables
    from cli.screens.recall.epcis import write_epcis
    from cli.screens.recall.events import write_key_data
    from ledger.errors import InputError

    if sum(place is not None for place in (file, csv, key_data, epcis)) != 1:
        raise InputError(
            "One thing is exported at a time.",
            "Give a FILE for the whole book, --csv DIR for its tables, --key-data FILE or "
            "--epcis FILE.",
        )
    days = (first, last)
    if csv is not None:
        write_tables(call, csv, force=force)
    elif key_data is not None:
        write_key_data(call, key_data, days, force=force)
    elif epcis is not None:
        write_epcis(call, epcis, days, force=force)
    elif file is not None:
        write_export(call, file)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.copies.copied import CopiedAnswer
    from reports.json.kit.answer import File
    from reports.json.recall.epcis import EpcisAnswer

    return (CopiedAnswer, File, EpcisAnswer)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(export, answers))
