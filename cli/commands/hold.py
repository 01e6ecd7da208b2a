"""The command `hold`: put a lot on hold."""

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Lot
from cli.kit.parsing import Verb
from cli.kit.record import record


def hold(call: Call, lot: Lot) -> None:
    """Put a lot on hold."""
    from ledger.service.verdicts.judge import judge as verb

    record(call, verb, lot=lot, verdict="hold")


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(hold))
