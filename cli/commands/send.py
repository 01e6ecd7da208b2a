"""The command `send`: send goods out, write them off, or take them back."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.complete import complete_party
from cli.kit.options import Lot, Text
from cli.kit.parsing import Verb
from cli.kit.record import record


def send(
    call: Call,
    lot: Lot,
    amount: Annotated[
        list[str], typer.Argument(help="How many bottles, or a volume; all for all of it.")
    ],
    to: Annotated[
        Text,
        typer.Option(
            "--to", help="Who gets it; or market, or walk-in.", autocompletion=complete_party
        ),
    ] = None,
    sender: Annotated[
        Text,
        typer.Option(
            "--from", help="Who sent it back; or market, or walk-in.", autocompletion=complete_party
        ),
    ] = None,
    moved_as: Annotated[
        Text,
        typer.Option(
            "--as",
            help="sale, sample, tasting, on-return, returned, breakage, retained or destroyed; "
            "default sale, with --from returned.",
        ),
    ] = None,
    document: Annotated[Text, typer.Option(help="Delivery note, invoice or stall sheet.")] = None,
    witness: Annotated[Text, typer.Option(help="Who saw it destroyed.")] = None,
) -> None:
    """Send goods out, write them off, or take them back."""
    from ledger.service.goods.send import send as verb

    record(
        call,
        verb,
        lot=lot,
        amount=" ".join(amount),
        moved_as=moved_as or ("returned" if sender else None),
        party=to or sender,
        document=document,
        witness=witness,
    )


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(send))
