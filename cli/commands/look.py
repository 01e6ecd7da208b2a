"""The command `look`: record how clear a lot looked."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Lot, Temp, Text
from cli.kit.parsing import Verb
from cli.kit.record import record


def look(
    call: Call,
    lot: Lot,
    grade: Annotated[str, typer.Argument(help="bright, clear, hazy, opalescent, cloudy or milky.")],
    of: Annotated[Text, typer.Option(help="neat, in-syrup or as-poured.")] = None,
    dilution: Annotated[Text, typer.Option(help="As poured at, such as 1:7.")] = None,
    ntu: Annotated[Text, typer.Option(help="Turbidity in NTU.")] = None,
    instrument: Annotated[Text, typer.Option(help="Meter it was read on.")] = None,
    zeroed_on: Annotated[Text, typer.Option(help="What the meter was set to zero on.")] = None,
    age: Annotated[Text, typer.Option(help="Age of the sample, such as 24h.")] = None,
    temp: Temp = None,
    flag: Annotated[
        list[str] | None, typer.Option(help="ring, louche, sediment, floc or crystals.")
    ] = None,
    words: Annotated[Text, typer.Option(help="Colour, nose, taste.")] = None,
) -> None:
    """Record how clear a lot looked."""
    from ledger.service.bench.look import look as verb

    record(
        call,
        verb,
        lot=lot,
        grade=grade,
        of=of,
        dilution=dilution,
        ntu=ntu,
        instrument=instrument,
        zeroed_on=zeroed_on,
        age=age,
        temp=temp,
        flags=",".join(flag or []),
        words=words,
    )


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(look))
