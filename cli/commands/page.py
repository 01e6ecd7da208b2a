"""The command `page`: write pages of lots for who pours them."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import LotOrNone
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def page(
    call: Call,
    lot: LotOrNone = None,
    every: Annotated[bool, typer.Option("--all", help="Of all bottled lots.")] = False,
    out: Annotated[
        Path, typer.Option("--out", metavar="DIR", help="Folder for them; made if missing.")
    ] = Path("pages"),
) -> None:
    """Write a small page of a lot for who pours it, or of all."""
    from cli.screens.glass.page import write_pages

    write_pages(call, lot, out, every=every)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.kit.answer import File

    return (list[File],)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(page, answers))
