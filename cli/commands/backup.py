"""The command `backup`: write a verified copy of the book, named by day and seal."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def backup(
    call: Call,
    folder: Annotated[
        Path | None, typer.Argument(metavar="DIR", help="Folder for the copy; default this one.")
    ] = None,
    rehearse: Annotated[
        Path | None,
        typer.Option(metavar="DIR", help="Put its newest copy back aside; say what is lost."),
    ] = None,
) -> None:
    """Write a verified copy of the book, named by day and seal."""
    from cli.screens.copies.copied import write_backup
    from cli.screens.copies.rehearsal import show_rehearsal

    if rehearse is not None:
        show_rehearsal(call, rehearse)
    else:
        write_backup(call, folder or Path())


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.copies.copied import CopiedAnswer
    from reports.json.copies.rehearsal import RehearsalAnswer

    return (CopiedAnswer, RehearsalAnswer)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(backup, answers))
