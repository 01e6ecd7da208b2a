"""The command `correct`: correct an entry by a new one; the old one stays readable."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import EntryNumber
from cli.kit.parsing import Verb
from cli.kit.record import record


def correct(
    call: Call,
    entry: EntryNumber,
    change: Annotated[
        list[str] | None, typer.Option("--set", help="What is right: amount=32mL.")
    ] = None,
) -> None:
    """Correct an entry by a new one; the old one stays readable."""
    from ledger.service.evidence.correct import correct as verb

    record(call, verb, entry=entry, changes="; ".join(change or []))


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(correct))
