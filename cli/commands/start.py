"""Commands that make a batch: receive, start, add, rest, makeup, finish, note.

Guarantees: amounts may be written without quotes (0.5 fl oz). Refuses: rules of their own.
"""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import (
    Amount,
    BestBefore,
    Code,
    Force,
    Labour,
    Lot,
    LotOrHouse,
    Source,
    Temp,
    Text,
    Vessel,
    With,
)
from cli.kit.parsing import Verb
from cli.kit.record import record


def receive(
    call: Call,
    material: Annotated[str, typer.Argument(help="Short name of the material.")],
    amount: Amount,
    supplier: Annotated[Text, typer.Option("--from", help="Who sent it.")] = None,
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
    record(
        call,
        "receive",
        material=material,
        amount=" ".join(amount),
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


def start(
    call: Call,
    formula: Annotated[Text, typer.Argument(help="Formula to follow, if there is one.")] = None,
    volume: Annotated[list[str] | None, typer.Argument(help="Target volume.")] = None,
    product: Annotated[Text, typer.Option(help="Name of what is made.")] = None,
    kind: Annotated[
        Text,
        typer.Option(
            help="essence, washed-essence, gum-emulsion, blend, macerate, base-syrup, syrup or "
            "rework."
        ),
    ] = None,
    target: Annotated[Text, typer.Option(help="Target volume.")] = None,
    pour: Annotated[Text, typer.Option(help="How a syrup is poured, such as 1:7.")] = None,
    best_before: BestBefore = None,
    vessel: Vessel = None,
    trial: Annotated[Text, typer.Option(help="Name of the trial it belongs to.")] = None,
    factor: Annotated[
        list[str] | None, typer.Option(help="Factor set on purpose: rest=48h.")
    ] = None,
    control: Annotated[
        bool, typer.Option("--control", help="The control of its trial: the house method.")
    ] = False,
    repeat: Annotated[Text, typer.Option(help="Which repeat of the same factors, from 1.")] = None,
    version: Annotated[
        Text, typer.Option(help="Version of the formula; default the newest in use.")
    ] = None,
    sheet_out: Annotated[
        Path | None, typer.Option("--print", metavar="FILE", help="PDF file for its batch sheet.")
    ] = None,
    force: Force = False,
    code: Code = None,
) -> None:
    """Begin a batch; opens a lot."""
    from cli.screens.sheet import begin

    words = {
        "formula": formula,
        "product": product,
        "kind": kind,
        "target": target or " ".join(volume or []),
        "pour": pour,
        "best_before": best_before,
        "vessel": vessel,
        "trial": trial,
        "factors": "; ".join(factor or []),
        "control": "yes" if control else None,
        "repeat": repeat,
        "version": version,
        "code": code,
    }
    begin(call, words, sheet_out, force=force)


def add(
    call: Call,
    lot: Lot,
    source: Source,
    amount: Amount,
    added_as: Annotated[
        Text, typer.Option("--as", help="ingredient, top-up, rework, rinse-liquor or old-cake.")
    ] = None,
    temp: Temp = None,
    over: Annotated[Text, typer.Option(help="How long the adding took, such as 5min.")] = None,
) -> None:
    """Put some of a lot into a batch."""
    record(
        call,
        "add",
        lot=lot,
        source=source,
        amount=" ".join(amount),
        added_as=added_as,
        temp=temp,
        minutes=over,
    )


def rest(
    call: Call,
    lot: Lot,
    purpose: Annotated[Text, typer.Option("--for", help="macerate, settle or chill.")] = None,
    end: Annotated[bool, typer.Option("--end", help="End the rest that goes on.")] = False,
    started: Annotated[Text, typer.Option("--started", help="When it began.")] = None,
    until: Annotated[Text, typer.Option("--until", help="When it ended.")] = None,
    temp: Temp = None,
    shaken: Annotated[Text, typer.Option(help="How many times it was shaken.")] = None,
    vessel: Vessel = None,
) -> None:
    """Begin a rest, end it, or tell a whole one."""
    record(
        call,
        "rest",
        lot=lot,
        purpose=purpose,
        ended="yes" if end else None,
        started=started,
        until=until,
        temp=temp,
        shaken=shaken,
        vessel=vessel,
    )


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
    record(call, "makeup", lot=lot, volume=" ".join(volume), source=source, used=used, temp=temp)


def finish(
    call: Call,
    lot: Lot,
    volume: Amount,
    temp: Temp = None,
    waste: Annotated[Text, typer.Option(help="Volume spilt or thrown away.")] = None,
    labour: Labour = None,
) -> None:
    """End the making of a batch with what came out."""
    words = {"temp": temp, "waste": waste, "labour": labour}
    record(call, "finish", lot=lot, volume=" ".join(volume), **words)


def note(
    call: Call,
    lot: LotOrHouse,
    text: Annotated[list[str], typer.Argument(help="The words.")],
) -> None:
    """Write a note."""
    record(call, "note", lot=None if lot == "-" else lot, text=" ".join(text))


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    for function in (receive, start, add, rest, makeup, finish, note):
        app.command(cls=Verb)(writes(function))
