"""The command `packet`: gather all that an inspector asks for in one PDF."""

from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.complete import complete_lot
from cli.kit.options import Force, Out, Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def packet(
    call: Call,
    out: Out,
    lot: Annotated[
        Text,
        typer.Argument(
            help="Code of the lot, or its ending; . for the lot in hand.",
            autocompletion=complete_lot,
        ),
    ] = None,
    first: Annotated[
        Text, typer.Option("--from", metavar="DAY", help="First day of a period.")
    ] = None,
    last: Annotated[Text, typer.Option("--to", metavar="DAY", help="Its last day.")] = None,
    force: Force = False,
) -> None:
    """Gather all that an inspector asks for of a lot or a period in one PDF."""
    from cli.screens.lots.packet import write_packet

    write_packet(call, lot, first, last, out, force=force)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.lots.packet import PacketAnswer

    return (PacketAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(packet, answers))
