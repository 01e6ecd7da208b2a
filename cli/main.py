"""The command's front door: lists the commands and takes the global options.

Guarantees: a command is loaded when it is called, the book when it runs.
"""

import sys

import typer

from cli.front import Front
from cli.kit.call import (
    AtOption,
    BecauseOption,
    ByOption,
    JsonOption,
    LedgerOption,
    OriginOption,
    SheetOption,
)

app = typer.Typer(
    name="pottle",
    cls=Front,
    help="The batch book of a small maker of soda-fountain essences and syrups.",
    no_args_is_help=True,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
)


@app.callback()
def options(
    ledger: LedgerOption = None,
    by: ByOption = None,
    at: AtOption = None,
    because: BecauseOption = None,
    origin: OriginOption = None,
    sheet: SheetOption = None,
    json: JsonOption = False,
) -> None:
    """The batch book of a small maker of soda-fountain essences and syrups."""


def run() -> None:
    """Run the command that the words of the call name."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            # A book holds letters that not every terminal or pipe is set to; none is to end a
            # command.
            stream.reconfigure(encoding="utf-8", errors="replace")
    app()
