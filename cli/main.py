"""The command's front door: lists the commands and takes the global options.

Guarantees: a command is loaded when it is called, the book when it runs.
"""

import os
import sys
from pathlib import Path
from typing import Annotated

import typer
from typer._click.exceptions import UsageError

from cli.front import Front
from cli.kit.call import (
    AtOption,
    BecauseOption,
    ByOption,
    Call,
    JsonOption,
    LedgerOption,
    OriginOption,
    SheetOption,
)
from cli.kit.errors import run_safely, unsaid
from cli.kit.welcome import welcome

app = typer.Typer(
    name="pottle",
    cls=Front,
    help="The batch book of a small maker of soda-fountain essences and syrups.",
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
)


def tell(asked: bool) -> None:
    """Say which version of pottle this is, where that is asked, and end."""
    if asked:
        from importlib.metadata import version

        print(f"pottle {version('pottle')}")
        raise typer.Exit


@app.callback(invoke_without_command=True)
def options(
    context: typer.Context,
    ledger: LedgerOption = None,
    by: ByOption = None,
    at: AtOption = None,
    because: BecauseOption = None,
    origin: OriginOption = None,
    sheet: SheetOption = None,
    json: JsonOption = False,
    _version: Annotated[
        bool,
        typer.Option("--version", help="Say which version this is.", is_eager=True, callback=tell),
    ] = False,
) -> None:
    """The batch book of a small maker of soda-fountain essences and syrups."""
    if context.invoked_subcommand is None:
        if json:
            raise UsageError("Missing command.", context)
        call = Call(ledger=ledger)
        run_safely(lambda: welcome(call), as_json=False)


def run() -> None:
    """Run the command that the words of the call name."""
    # A shell may close them; what is said then goes nowhere, and the exit code stays.
    sys.stdout = sys.stdout or Path(os.devnull).open("w", encoding="utf-8")  # noqa: SIM115 - until the end
    sys.stderr = sys.stderr or Path(os.devnull).open("w", encoding="utf-8")  # noqa: SIM115 - until the end
    # Nor does anybody answer then.
    sys.stdin = sys.stdin or Path(os.devnull).open(encoding="utf-8")  # noqa: SIM115 - until the end
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            # A book holds letters that not every terminal or pipe is set to; none is to end a
            # command.
            stream.reconfigure(encoding="utf-8", errors="replace")
    try:
        try:
            app()
        finally:
            # Here, where it can still be told, and not while Python ends.
            sys.stdout.flush()
    except OSError as error:
        sys.exit(unsaid(error, (), as_json=False))
