"""The command `contact`: record a call to somebody who holds goods of a lot."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.complete import complete_party
from cli.kit.options import Lot, Text
from cli.kit.parsing import Verb
from cli.kit.record import record


def contact(
    call: Call,
    lot: Lot,
    party: Annotated[
        str,
        typer.Argument(
            help="Who was called, as named in the deliveries.", autocompletion=complete_party
        ),
    ],
    reached: Annotated[
        str, typer.Option(help="How it ended: spoken, left-word or no-answer.")
    ] = "spoken",
    still: Annotated[Text, typer.Option(help="How many they say they have still.")] = None,
    words: Annotated[Text, typer.Option(help="What was said.")] = None,
) -> None:
    """Record a call to somebody who holds goods of a lot."""
    from ledger.service.recall.contact import contact as verb

    record(call, verb, lot=lot, party=party, reached=reached, still_there=still, words=words)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(contact))
