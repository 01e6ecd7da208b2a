"""The command `add`: put some of a lot into a batch."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Lot, Source, Temp, Text
from cli.kit.parsing import Verb
from cli.kit.record import record


def add(
    call: Call,
    lot: Lot,
    source: Source,
    amount: Annotated[
        list[str],
        typer.Argument(help="Amount with its unit, such as 30mL; all for all that is there of it."),
    ],
    added_as: Annotated[
        Text, typer.Option("--as", help="ingredient, top-up, rework, rinse-liquor or old-cake.")
    ] = None,
    temp: Temp = None,
    took: Annotated[Text, typer.Option(help="How long the adding took, such as 5min.")] = None,
    triturate: Annotated[
        Text, typer.Option(help="How long it was rubbed down, such as 10min.")
    ] = None,
    instrument: Annotated[Text, typer.Option(help="Balance it was measured on.")] = None,
) -> None:
    """Put some of a lot into a batch."""
    from ledger.service.bench.add import add as verb

    record(
        call,
        verb,
        lot=lot,
        source=source,
        amount=" ".join(amount),
        added_as=added_as,
        temp=temp,
        minutes=took,
        triturated=triturate,
        instrument=instrument,
    )


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(add))
