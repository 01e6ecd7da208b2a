"""The command `compare`: compare the batches of a trial: response by factor, control beside it."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Force
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds
from cli.kit.sheets import Csv


def compare(
    call: Call,
    group: Annotated[list[str], typer.Argument(help="Name of the trial.")],
    out: Annotated[Path | None, typer.Option("--out", help="PDF file to write.")] = None,
    csv: Csv = None,
    force: Force = False,
) -> None:
    """Compare the batches of a trial: response by factor, control beside it."""
    from cli.screens.causes.compare import show_comparison

    show_comparison(call, " ".join(group), out, csv, force=force)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.causes.compare import CompareAnswer

    return (CompareAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(compare, answers))
