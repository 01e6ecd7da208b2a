"""The command `note`: write a note."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import LotOrHouse
from cli.kit.parsing import Verb
from cli.kit.record import record


def note(
    call: Call,
    lot: LotOrHouse,
    text: Annotated[list[str], typer.Argument(help="The words.")],
) -> None:
    """Write a note."""
    from ledger.service.bench.note import note as verb

    record(call, verb, lot=None if lot == "-" else lot, text=" ".join(text))


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(note))
