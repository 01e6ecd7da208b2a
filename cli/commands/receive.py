"""The command `receive`: record a delivery; opens a lot."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.complete import complete_material, complete_party
from cli.kit.options import BestBefore, Code, Text
from cli.kit.parsing import Verb


def receive(
    call: Call,
    material: Annotated[
        Text,
        typer.Argument(
            help="Short name of the material; at a terminal it is asked for.",
            autocompletion=complete_material,
        ),
    ] = None,
    amount: Annotated[
        list[str] | None, typer.Argument(help="Amount with its unit, such as 30mL or 0.5 fl oz.")
    ] = None,
    supplier: Annotated[
        Text, typer.Option("--from", help="Who sent it.", autocompletion=complete_party)
    ] = None,
    their_lot: Annotated[Text, typer.Option(help="The supplier's lot.")] = None,
    cost: Annotated[Text, typer.Option(help="What it cost in all.")] = None,
    best_before: BestBefore = None,
    certificate: Annotated[Text, typer.Option(help="Reference of the certificate.")] = None,
    density: Annotated[Text, typer.Option(help="Density of this lot in g/mL.")] = None,
    abv: Annotated[Text, typer.Option(help="Strength of this lot in % vol.")] = None,
    food_grade: Annotated[Text, typer.Option(help="yes, no or unknown.")] = None,
    duty: Annotated[Text, typer.Option(help="How much of the cost is spirit duty.")] = None,
    document: Annotated[Text, typer.Option(help="Number of the delivery note.")] = None,
    hold: Annotated[bool, typer.Option("--hold", help="Put it on hold at once.")] = False,
    code: Code = None,
) -> None:
    """Record a delivery; opens a lot."""
    from cli.screens.bench.receive import Delivery, received

    told = Delivery(
        material=material,
        amount=" ".join(amount or []) or None,
        supplier=supplier,
        supplier_lot=their_lot,
        cost=cost,
        best_before=best_before,
        certificate=certificate,
        density=density,
        abv=abv,
        food_grade=food_grade,
        duty=duty,
        document=document,
        hold="yes" if hold else None,
        code=code,
    )
    received(call, told)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(receive))
