"""The command `sheet`: print or show the batch sheet that a batch is made from."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Force, Lot
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def sheet(
    call: Call,
    lot: Lot,
    out: Annotated[Path | None, typer.Option("--out", help="PDF file to write.")] = None,
    force: Force = False,
) -> None:
    """Print or show the batch sheet that a batch is made from."""
    from cli.screens.bench.sheet import show_sheet

    show_sheet(call, lot, out, force=force)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.bench.sheet import SheetAnswer

    return (SheetAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(sheet, answers))
