"""The command `case`: put bottles into cases, each with a number of its own."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Lot
from cli.kit.parsing import Verb
from cli.kit.record import record


def case(
    call: Call,
    lot: Lot,
    pack: Annotated[list[str], typer.Argument(help="How many cases of how many: 4 x 12.")],
) -> None:
    """Put bottles into cases, each with a number of its own."""
    from ledger.service.goods.case import cases as verb

    record(call, verb, lot=lot, pack=" ".join(pack))


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(case))
