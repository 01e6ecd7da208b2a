"""The command `measure`: record an instrument's reading."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Lot, Temp, Text
from cli.kit.parsing import Verb
from cli.kit.record import record


def measure(
    call: Call,
    lot: Lot,
    what: Annotated[str, typer.Argument(help="brix, abv, density, ph, temperature or weight.")],
    reading: Annotated[str, typer.Argument(help="The reading as the instrument shows it.")],
    temp: Temp = None,
    instrument: Annotated[Text, typer.Option(help="The instrument.")] = None,
) -> None:
    """Record an instrument's reading."""
    from ledger.service.bench.measure import measure as verb

    record(call, verb, lot=lot, what=what, reading=reading, temp=temp, instrument=instrument)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(measure))
