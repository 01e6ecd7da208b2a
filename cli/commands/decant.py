"""The command `decant`: draw the clear liquid off its sediment."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Amount, Lot, Text
from cli.kit.parsing import Verb
from cli.kit.record import record


def decant(
    call: Call,
    lot: Lot,
    drawn: Amount,
    heel: Annotated[Text, typer.Option(help="Volume left behind.")] = None,
) -> None:
    """Draw the clear liquid off its sediment."""
    from ledger.service.bench.decant import decant as verb

    record(call, verb, lot=lot, drawn=" ".join(drawn), heel=heel)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(decant))
