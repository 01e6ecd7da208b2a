"""The command `seal`: print the seal of the book: house, number of entries, root."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Force
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def seal(
    call: Call,
    out: Annotated[Path | None, typer.Option(help="Also write the lines to this file.")] = None,
    force: Force = False,
) -> None:
    """Print the seal of the book: house, number of entries, root."""
    from cli.screens.evidence.seal import print_seal

    print_seal(call, out, force=force)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.evidence.seal import SealAnswer

    return (SealAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(seal, answers))
