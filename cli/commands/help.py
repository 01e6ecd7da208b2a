"""The command `help`: show the help of a command, or of the options that all have."""

from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.complete import complete_command
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def help_(
    call: Call,
    words: Annotated[
        list[str] | None,
        typer.Argument(
            metavar="[COMMAND]",
            help="A command, or options for those that all have; none: all commands.",
            autocompletion=complete_command,
        ),
    ] = None,
) -> None:
    """Show the help of a command, or of the options that all have."""
    from cli.screens.guide.help import show_help

    show_help(call, tuple(words or ()))


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.guide.help import HelpAnswer

    return (HelpAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command("help", cls=Verb)(reads(help_, answers))
