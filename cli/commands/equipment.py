"""The command `equipment`: record that an instrument was taken into use, checked or set."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Text
from cli.kit.parsing import Verb
from cli.kit.record import record


def equipment(
    call: Call,
    name: Annotated[str, typer.Argument(help="Which instrument or vessel.")],
    words: Annotated[list[str], typer.Argument(help="What was done or found.")],
    holds: Annotated[Text, typer.Option(help="How much a vessel holds, such as 5L.")] = None,
) -> None:
    """Record that an instrument was taken into use, checked or set."""
    from ledger.service.bench.equipment import equipment as verb

    record(call, verb, name=name, words=" ".join(words), holds=holds)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(equipment))
