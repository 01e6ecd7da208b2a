"""The command `check`: record that a second person checked a lot or an entry."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.complete import complete_lot
from cli.kit.options import Text
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
    from ledger.service.verdicts.check import check as verb

    told = [*([lot] if lot and entry else []), *(words or [])]
    record(call, verb, lot=None if entry else lot, entry=entry, words=" ".join(told) or None)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(check))
