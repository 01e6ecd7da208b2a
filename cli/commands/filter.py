"""Commands that clear a batch and look at it: filter, rinse, decant, look, measure.

Guarantees: amounts may be written without quotes (0.5 fl oz). Refuses: rules of their own.
"""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Amount, Code, Lot, Temp, Text, With
from cli.kit.parsing import Verb
from cli.kit.record import record


def filter_(
    call: Call,
    lot: Lot,
    medium: Annotated[str, typer.Option(help="paper, frit, membrane and so on.")],
    out: Annotated[str, typer.Option("--out", help="Volume of filtrate.")],
    put_in: Annotated[
        Text, typer.Option("--in", help="Volume put on the filter; default all that is there.")
    ] = None,
    pore: Annotated[Text, typer.Option(help="Pore size in µm: 20 or 20-25.")] = None,
    vacuum: Annotated[Text, typer.Option(help="kPa below atmosphere.")] = None,
    absolute: Annotated[bool, typer.Option("--absolute", help="The vacuum is absolute.")] = False,
    temp: Temp = None,
    cake: Annotated[Text, typer.Option(help="fresh or same.")] = None,
    cake_of: Annotated[Text, typer.Option(help="Lot whose old cake it ran through.")] = None,
    precoat: Annotated[Text, typer.Option(help="Precoat laid beforehand, such as 4g.")] = None,
    first_runnings: Annotated[Text, typer.Option(help="First runnings returned.")] = None,
    took: Annotated[Text, typer.Option(help="How long it took, such as 20min.")] = None,
    in_cake: Annotated[Text, typer.Option(help="Liquid held in the cake, if measured.")] = None,
) -> None:
    """Record one pass through a filter."""
    record(
        call,
        "filter",
        lot=lot,
        medium=medium,
        volume_in=put_in,
        volume_out=out,
        pore=pore,
        vacuum=vacuum,
        absolute="yes" if absolute else None,
        temp=temp,
        cake=cake,
        cake_of=cake_of,
        precoat=precoat,
        first_runnings=first_runnings,
        minutes=took,
        in_cake=in_cake,
    )


def rinse(
    call: Call,
    lot: Lot,
    source: With,
    put_in: Annotated[str, typer.Option("--in", help="Volume put on the cake.")],
    out: Annotated[str, typer.Option("--out", help="Volume that ran through.")],
    to: Annotated[str, typer.Option("--to", help="batch, apart or waste.")],
    code: Code = None,
) -> None:
    """Rinse the cake; kept apart, the liquor opens a lot."""
    record(
        call,
        "rinse",
        lot=lot,
        source=source,
        volume_in=put_in,
        volume_out=out,
        went_to=to,
        code=code,
    )


def decant(
    call: Call,
    lot: Lot,
    drawn: Amount,
    heel: Annotated[Text, typer.Option(help="Volume left behind.")] = None,
) -> None:
    """Draw the clear liquid off its sediment."""
    record(call, "decant", lot=lot, drawn=" ".join(drawn), heel=heel)


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
    record(
        call,
        "look",
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


def measure(
    call: Call,
    lot: Lot,
    what: Annotated[str, typer.Argument(help="brix, abv, density, ph, temperature or weight.")],
    reading: Annotated[str, typer.Argument(help="The reading as the instrument shows it.")],
    temp: Temp = None,
    instrument: Annotated[Text, typer.Option(help="The instrument.")] = None,
) -> None:
    """Record an instrument's reading."""
    record(call, "measure", lot=lot, what=what, reading=reading, temp=temp, instrument=instrument)


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    app.command("filter", cls=Verb)(writes(filter_))
    for function in (rinse, decant, look, measure):
        app.command(cls=Verb)(writes(function))
