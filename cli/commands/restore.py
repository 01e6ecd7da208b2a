"""The command `restore`: put a backup where no book is yet, after verifying it."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def restore(
    call: Call,
    file: Annotated[Path, typer.Argument(help="The backup.")],
    to: Annotated[str, typer.Option(metavar="PATH|URL", help="Where the book goes.")],
) -> None:
    """Put a backup where no book is yet, after verifying it."""
    from cli.screens.copies.copied import put_back

    put_back(call, file, to)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.copies.copied import CopiedAnswer

    return (CopiedAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(restore, answers))
