"""The command `demo`: play an invented season into a new book; trace a bottle."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def demo(
    call: Call,
    folder: Annotated[
        Path, typer.Argument(help="Folder for the book and its papers; made if missing.")
    ] = Path("demo"),
    today: Annotated[
        Text, typer.Option(help="Play it as if it were this day: 2026-10-06; default today.")
    ] = None,
) -> None:
    """Play an invented season into a new book; trace a bottle."""
    from cli.screens.copies.demo import demonstrate

    demonstrate(call, folder, today)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.copies.demo import DemoAnswer

    return (DemoAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(demo, answers, is_live=True))
