"""The command `reject`: reject a lot."""

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Lot
from cli.kit.parsing import Verb
from cli.kit.record import record


def reject(call: Call, lot: Lot) -> None:
    """Reject a lot."""
    from ledger.service.verdicts.judge import judge as verb

    record(call, verb, lot=lot, verdict="reject")


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(reject))
