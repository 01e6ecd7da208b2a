"""The command `upgrade`: bring an older book to this version, after a backup."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def upgrade(
    call: Call,
    keep_in: Annotated[
        Path | None,
        typer.Option(metavar="DIR", help="Folder for the copy that is kept; default this one."),
    ] = None,
) -> None:
    """Bring an older book to this version, after a backup."""
    from cli.screens.copies.copied import bring_up

    bring_up(call, keep_in or Path())


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.copies.upgrade import UpgradeAnswer

    return (UpgradeAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(upgrade, answers))
