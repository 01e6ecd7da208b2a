"""The command `list`: list sales, deliveries or cleanings of a period."""

from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Force, Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds
from cli.kit.sheets import Csv


def list_(
    call: Call,
    what: Annotated[str, typer.Argument(help="sales, receipts or cleanings.")],
    first: Annotated[Text, typer.Option("--from", help="Only of this day and later.")] = None,
    last: Annotated[Text, typer.Option("--to", help="Only of this day and before.")] = None,
    party: Annotated[
        Text, typer.Option("--party", help="Only to this customer, or of this supplier.")
    ] = None,
    csv: Csv = None,
    force: Force = False,
) -> None:
    """List sales, deliveries or cleanings of a period."""
    from cli.screens.lots.acts import list_acts

    list_acts(call, what, (first, last), party, csv, force=force)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.lots.acts import CleaningRow, ReceiptRow, SaleRow

    return (list[SaleRow], list[ReceiptRow], list[CleaningRow])


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command("list", cls=Verb)(reads(list_, answers))
