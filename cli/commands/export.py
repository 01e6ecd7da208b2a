"""The command `export`: write the book as lines of text that any place can import."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def export(
    call: Call, file: Annotated[Path, typer.Argument(help="File to write, as book.jsonl.")]
) -> None:
    """Write the book as lines of text that any place can import."""
    from cli.screens.copies.copied import write_export

    write_export(call, file)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.copies.copied import CopiedAnswer

    return (CopiedAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(export, answers))
