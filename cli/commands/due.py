"""The command `due`: list what is due: rests, samples to look at, dates, holds, complaints."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Force
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds
from cli.kit.sheets import Csv


def due(
    call: Call,
    watch: Annotated[bool, typer.Option("--watch", help="Keep it on the screen.")] = False,
    everything: Annotated[
        bool, typer.Option("--all", help="Also looks and dates that are long past.")
    ] = False,
    csv: Csv = None,
    ics: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Calendar to write it to (.ics).")
    ] = None,
    force: Force = False,
) -> None:
    """List what is due: rests, samples to look at, dates, holds, complaints."""
    from cli.screens.lots.due import show_due

    show_due(call, csv, ics, watch=watch, everything=everything, force=force)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.lots.due import DueRow

    return (list[DueRow],)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(due, answers))
