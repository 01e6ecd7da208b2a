"""The command `stock`: list what is on hand."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.complete import complete_material
from cli.kit.options import Force, Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds
from cli.kit.sheets import Csv


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
        Text,
        typer.Option(
            help="Only this material or product, by its name or code.",
            autocompletion=complete_material,
        ),
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
    csv: Csv = None,
    out: Annotated[
        Path | None, typer.Option("--out", help="PDF file for the account to write.")
    ] = None,
    force: Force = False,
) -> None:
    """List what is on hand."""
    from cli.kit.sheets import check_sheet
    from cli.screens.glass.spirit import show_spirit
    from cli.screens.lots.stock import Wanted, list_low, list_stock

    check_sheet(csv, force=force)
    # Only the account has a period, so whoever gives one wants it.
    if spirit or first or last or out:
        show_spirit(call, first, last, csv, out, force=force)
    elif low:
        list_low(call, low, of, csv, force=force)
    else:
        wanted = Wanted(everything, by_date, value, of, csv, force)
        list_stock(call, wanted)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.glass.spirit import SpiritAnswer
    from reports.json.lots.stock import LowRow, StockRow

    return (list[StockRow], list[LowRow], SpiritAnswer)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(stock, answers))
