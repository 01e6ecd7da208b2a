"""The command `rest`: begin a rest, end it, or tell a whole one."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Lot, Temp, Text, Vessel
from cli.kit.parsing import Verb
from cli.kit.record import record


def rest(
    call: Call,
    lot: Lot,
    purpose: Annotated[Text, typer.Option("--for", help="macerate, settle, chill or warm.")] = None,
    end: Annotated[bool, typer.Option("--end", help="End the rest that goes on.")] = False,
    started: Annotated[Text, typer.Option("--started", help="When it began.")] = None,
    until: Annotated[Text, typer.Option("--until", help="When it ended.")] = None,
    temp: Temp = None,
    shaken: Annotated[Text, typer.Option(help="How many times it was shaken.")] = None,
    vessel: Vessel = None,
) -> None:
    """Begin a rest, end it, or tell a whole one."""
    from ledger.service.bench.rest import rest as verb

    record(
        call,
        verb,
        lot=lot,
        purpose=purpose,
        ended="yes" if end else None,
        started=started,
        until=until,
        temp=temp,
        shaken=shaken,
        vessel=vessel,
    )


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(rest))
