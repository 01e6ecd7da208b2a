"""The command `strike`: strike out an entry made by mistake; it stays readable."""

import typer

from cli.kit.call import Call, writes
from cli.kit.options import EntryNumber
from cli.kit.parsing import Verb
from cli.kit.record import record


def strike(call: Call, entry: EntryNumber) -> None:
    """Strike out an entry made by mistake; it stays readable."""
    from ledger.service.evidence.strike import strike as verb

    record(call, verb, entry=entry)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(strike))
