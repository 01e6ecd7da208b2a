"""The command `trace`: trace a lot back to its inputs and forward to who has it."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Force, Lot, Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def trace(
    call: Call,
    lot: Lot,
    back: Annotated[bool, typer.Option("--back", help="Only what it is made of.")] = False,
    forward: Annotated[bool, typer.Option("--forward", help="Only what became of it.")] = False,
    depth: Annotated[int | None, typer.Option(min=1, help="How many steps to show.")] = None,
    only: Annotated[
        Text, typer.Option(help="Only back to materials of this kind, such as oil.")
    ] = None,
    csv: Annotated[Path | None, typer.Option("--csv", help="CSV file to write.")] = None,
    out: Annotated[Path | None, typer.Option("--out", help="PDF file to write.")] = None,
    force: Force = False,
) -> None:
    """Trace a lot back to its inputs and forward to who has it."""
    from cli.screens.lots.trace import Asked, show_trace

    is_back = back or only is not None or not forward
    is_forward = forward or not (back or only is not None)
    show_trace(call, lot, Asked(is_back, is_forward, depth, only, csv, out, force))


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.lots.trace import TraceAnswer

    return (TraceAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(trace, answers))
