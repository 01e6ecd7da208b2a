"""The command `chart`: how batches turned out one after the other, and what the next may show."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Force
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def chart(
    call: Call,
    what: Annotated[
        list[str] | None,
        typer.Argument(help="A product, or a kind such as essence or syrup; none: a list."),
    ] = None,
    out: Annotated[Path | None, typer.Option("--out", help="PDF file to write.")] = None,
    force: Force = False,
) -> None:
    """Chart how batches turned out, one after the other, and what the next may show."""
    from cli.screens.causes.chart import show_chart

    show_chart(call, " ".join(what or ()), out, force=force)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.causes.chart import ChartableTold, ChartAnswer

    return (ChartAnswer, list[ChartableTold])


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(chart, answers))
