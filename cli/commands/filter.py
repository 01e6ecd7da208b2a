"""The command `filter`: record one pass through a filter."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.complete import complete_lot
from cli.kit.options import Lot, Temp, Text
from cli.kit.parsing import Verb
from cli.kit.record import record


def filter_(
    call: Call,
    lot: Lot,
    medium: Annotated[
        str, typer.Option(help="paper, frit, membrane, pad, cloth, cotton, sieve or unsaid.")
    ],
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
    paper: Annotated[
        Text,
        typer.Option(help="Lot that the paper was taken from.", autocompletion=complete_lot),
    ] = None,
    wet: Annotated[
        Text,
        typer.Option("--wet", help="Lot it was wetted with first.", autocompletion=complete_lot),
    ] = None,
) -> None:
    """Record one pass through a filter."""
    from ledger.service.bench.filter import filter_ as verb

    record(
        call,
        verb,
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
        paper=paper,
        wetted_with=wet,
    )


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command("filter", cls=Verb)(writes(filter_))
