"""The command `recall`: hold a lot and all made of it; say where it is and whom to call."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Force, Lot, Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def recall(
    call: Call,
    lot: Lot,
    drill: Annotated[
        bool, typer.Option("--drill", help="Only try it: nothing is held or recorded.")
    ] = False,
    close: Annotated[
        Text, typer.Option("--close", metavar="CAUSE", help="Close the recall with its cause.")
    ] = None,
    out: Annotated[
        Path | None,
        typer.Option("--out", metavar="FOLDER", help="Folder for the PDF pack and CSV files."),
    ] = None,
    force: Force = False,
) -> None:
    """Hold a lot and all made of it; say where it is and whom to call."""
    from cli.screens.recall.recall import recall_lot

    recall_lot(call, lot, drill=drill, close=close, out=out, force=force)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.recall.recall import RecallAnswer

    return (RecallAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(recall, answers))
