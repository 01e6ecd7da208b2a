"""The command `bottle`: fill a lot into bottles; opens a packed lot."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.complete import complete_source
from cli.kit.options import BestBefore, Code, Labour, Lot, Text
from cli.kit.parsing import Verb
from cli.kit.record import record


def bottle(
    call: Call,
    lot: Lot,
    pack: Annotated[list[str], typer.Argument(help="How many of what size: 15 x 250mL.")],
    bottles: Annotated[
        Text, typer.Option(help="Lot of the bottles.", autocompletion=complete_source)
    ] = None,
    caps: Annotated[
        Text, typer.Option(help="Lot of the closures.", autocompletion=complete_source)
    ] = None,
    drawn: Annotated[
        Text, typer.Option(help="Bulk volume it took, or all; default what they hold.")
    ] = None,
    fill_check: Annotated[Text, typer.Option(help="Weight of a checked fill in g.")] = None,
    best_before: BestBefore = None,
    labour: Labour = None,
    code: Code = None,
) -> None:
    """Fill a lot into bottles; opens a packed lot."""
    from ledger.service.goods.bottle import bottle as verb

    record(
        call,
        verb,
        source=lot,
        pack=" ".join(pack),
        bottles=bottles,
        caps=caps,
        drawn=drawn,
        fill_check=fill_check,
        best_before=best_before,
        labour=labour,
        code=code,
    )


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(bottle))
