"""The command `makeup`: make a batch up to a volume."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Amount, Lot, Temp, Text, With
from cli.kit.parsing import Verb
from cli.kit.record import record


def makeup(
    call: Call,
    lot: Lot,
    volume: Amount,
    source: With,
    used: Annotated[
        Text, typer.Option(help="How much of that it took; default what was missing.")
    ] = None,
    temp: Temp = None,
) -> None:
    """Make a batch up to a volume."""
    from ledger.service.bench.makeup import makeup as verb

    record(call, verb, lot=lot, volume=" ".join(volume), source=source, used=used, temp=temp)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(makeup))
