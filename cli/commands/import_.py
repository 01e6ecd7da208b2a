"""The command `import`: make a new book from the lines of an export."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def take_in(
    call: Call,
    book: Annotated[
        Path, typer.Option(metavar="FILE", help="A whole book, as pottle export wrote it.")
    ],
) -> None:
    """Make a new book from the lines of an export."""
    from cli.screens.copies.copied import take_in_book

    take_in_book(call, book)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.copies.copied import CopiedAnswer

    return (CopiedAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command("import", cls=Verb)(reads(take_in, answers))
