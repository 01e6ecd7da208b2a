"""Commands for a recall: recall, contact.

Guarantees: a drill records nothing; files are drawn whole before anything is written. Refuses:
rules of their own.
"""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Force, Lot, Text
from cli.kit.parsing import Verb
from cli.kit.record import record


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
    from cli.screens.recall import recall_lot

    recall_lot(call, lot, drill=drill, close=close, out=out, force=force)


def contact(
    call: Call,
    lot: Lot,
    party: Annotated[str, typer.Argument(help="Who was called, as named in the deliveries.")],
    reached: Annotated[
        str, typer.Option(help="How it ended: spoken, left-word or no-answer.")
    ] = "spoken",
    still: Annotated[Text, typer.Option(help="How many they say they have still.")] = None,
    words: Annotated[Text, typer.Option(help="What was said.")] = None,
) -> None:
    """Record a call to somebody who holds goods of a lot."""
    record(call, "contact", lot=lot, party=party, reached=reached, still_there=still, words=words)


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    for function in (recall, contact):
        app.command(cls=Verb)(writes(function))
