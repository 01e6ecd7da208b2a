"""The command `stock`: list what is on hand."""

from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def stock(
    call: Call,
    everything: Annotated[bool, typer.Option("--all", help="Also lots that are used up.")] = False,
    by_date: Annotated[
        bool, typer.Option("--by-date", help="First expired first; then by when they came.")
    ] = False,
    low: Annotated[
        Text, typer.Option(help="Only materials of which less than this is there: 500mL.")
    ] = None,
    value: Annotated[
        bool, typer.Option("--value", help="What is left of each delivery's cost.")
    ] = False,
    of: Annotated[
        Text, typer.Option(help="Only this material or product, by its name or code.")
    ] = None,
    spirit: Annotated[
        bool, typer.Option("--spirit", help="The spirit account: litres of pure alcohol.")
    ] = False,
    first: Annotated[
        Text, typer.Option("--from", help="First day of the account; default the year's.")
    ] = None,
    last: Annotated[
        Text, typer.Option("--to", help="Last day of the account; default today.")
    ] = None,
) -> None:
    """List what is on hand."""
    from cli.screens.glass.spirit import show_spirit
    from cli.screens.lots.stock import list_low, list_stock

    # Only the account has a period, so whoever gives one wants it.
    if spirit or first or last:
        show_spirit(call, first, last)
    elif low:
        list_low(call, low, of)
    else:
        list_stock(call, everything=everything, by_date=by_date, value=value, of=of)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.glass.spirit import SpiritAnswer
    from reports.json.lots.stock import LowRow, StockRow

    return (list[StockRow], list[LowRow], SpiritAnswer)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(stock, answers))
