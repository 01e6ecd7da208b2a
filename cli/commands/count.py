"""The command `count`: count, measure or weigh what is there of a lot."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Amount, Lot, Text
from cli.kit.parsing import Verb
from cli.kit.record import record


def count(
    call: Call,
    lot: Lot,
    amount: Amount,
    tare: Annotated[Text, typer.Option(help="Weight of the empty vessel, when weighed.")] = None,
) -> None:
    """Count, measure or weigh what is there of a lot."""
    from ledger.service.goods.count import count as verb

    record(call, verb, lot=lot, amount=" ".join(amount), tare=tare)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(count))
