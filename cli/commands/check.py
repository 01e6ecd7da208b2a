"""Commands of good order: check, clean, equipment, count.

Guarantees: nothing is changed in place. Refuses: rules of their own.
"""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.complete import complete_lot
from cli.kit.options import Amount, Lot, Text
from cli.kit.parsing import Verb
from cli.kit.record import record

Words = Annotated[list[str] | None, typer.Argument(help="What was checked.")]


def check(
    call: Call,
    lot: Annotated[
        Text,
        typer.Argument(help="Code of the lot that was checked.", autocompletion=complete_lot),
    ] = None,
    words: Words = None,
    entry: Annotated[Text, typer.Option(help="Number of one entry that was checked.")] = None,
) -> None:
    """Record that a second person checked a lot or an entry."""
    told = [*([lot] if lot and entry else []), *(words or [])]
    record(call, "check", lot=None if entry else lot, entry=entry, words=" ".join(told) or None)


def clean(
    call: Call,
    vessel: Annotated[list[str], typer.Argument(help="Which vessel.")],
    how: Annotated[str, typer.Option(help="How it was cleaned.")],
    held: Annotated[Text, typer.Option(help="What it held before.")] = None,
) -> None:
    """Record that a vessel was cleaned."""
    record(call, "clean", vessel=" ".join(vessel), method=how, last_held=held)


def equipment(
    call: Call,
    name: Annotated[str, typer.Argument(help="Which instrument or vessel.")],
    words: Annotated[list[str], typer.Argument(help="What was done or found.")],
) -> None:
    """Record that an instrument was taken into use, checked or set."""
    record(call, "equipment", name=name, words=" ".join(words))


def count(
    call: Call,
    lot: Lot,
    amount: Amount,
    tare: Annotated[Text, typer.Option(help="Weight of the empty vessel, when weighed.")] = None,
) -> None:
    """Count, measure or weigh what is there of a lot."""
    record(call, "count", lot=lot, amount=" ".join(amount), tare=tare)


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    for function in (check, clean, equipment, count):
        app.command(cls=Verb)(writes(function))
