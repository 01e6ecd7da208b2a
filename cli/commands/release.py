"""The command `release`: release a lot, if nothing stands in the way."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Lot
from cli.kit.parsing import Verb
from cli.kit.record import record


def release(
    call: Call,
    lot: Lot,
    anyway: Annotated[
        bool,
        typer.Option("--anyway", help="End a hold whatever else stands in the way; say why."),
    ] = False,
) -> None:
    """Release a lot, if nothing stands in the way."""
    from ledger.service.verdicts.judge import judge as verb

    record(call, verb, lot=lot, verdict="release", anyway="yes" if anyway else None)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(release))
