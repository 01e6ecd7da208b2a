"""The command `clean`: record that a vessel was cleaned."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Text
from cli.kit.parsing import Verb
from cli.kit.record import record


def clean(
    call: Call,
    vessel: Annotated[list[str], typer.Argument(help="Which vessel.")],
    how: Annotated[str, typer.Option(help="How it was cleaned.")],
    held: Annotated[Text, typer.Option(help="What it held before.")] = None,
) -> None:
    """Record that a vessel was cleaned."""
    from ledger.service.bench.clean import clean as verb

    record(call, verb, vessel=" ".join(vessel), method=how, last_held=held)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(clean))
