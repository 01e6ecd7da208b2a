"""The command `finish`: end the making of a batch with what came out."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Amount, Labour, Lot, Temp, Text
from cli.kit.parsing import Verb
from cli.kit.record import record


def finish(
    call: Call,
    lot: Lot,
    volume: Amount,
    temp: Temp = None,
    waste: Annotated[Text, typer.Option(help="Volume spilt or thrown away.")] = None,
    labour: Labour = None,
) -> None:
    """End the making of a batch with what came out."""
    from ledger.service.bench.finish import finish as verb

    record(
        call,
        verb,
        lot=lot,
        volume=" ".join(volume),
        temp=temp,
        waste=waste,
        labour=labour,
    )


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(finish))
