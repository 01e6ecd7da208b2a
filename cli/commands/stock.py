"""Commands that look things up: due, stock, lot, journal, trace.

Guarantees: they read only. Refuses: rules of their own.
"""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Force, Lot, LotOrNone, Text
from cli.kit.parsing import Verb


def due(
    call: Call,
    watch: Annotated[bool, typer.Option("--watch", help="Keep it on the screen.")] = False,
) -> None:
    """List what is due: rests, samples to look at, dates, holds."""
    from cli.screens.due import show_due

    show_due(call, watch=watch)


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
    from cli.screens.spirit import show_spirit
    from cli.screens.stock import list_low, list_stock

    if spirit:
        show_spirit(call, first, last)
    elif low:
        list_low(call, low, of)
    else:
        list_stock(call, everything=everything, by_date=by_date, value=value, of=of)


def lot(call: Call, lot: Lot) -> None:
    """Show one lot: its inputs, what was done, where it went."""
    from cli.screens.lot import show_lot

    show_lot(call, lot)


def journal(
    call: Call,
    lot: LotOrNone = None,
    last: Annotated[int, typer.Option(min=0, help="How many; 0 for all.")] = 20,
    entry: Annotated[int | None, typer.Option(help="One entry with all its corrections.")] = None,
) -> None:
    """List entries as they were written, corrections included."""
    from cli.screens.lot import show_journal

    show_journal(call, lot, last, entry)


def trace(
    call: Call,
    lot: Lot,
    back: Annotated[bool, typer.Option("--back", help="Only what it is made of.")] = False,
    forward: Annotated[bool, typer.Option("--forward", help="Only what became of it.")] = False,
    depth: Annotated[int | None, typer.Option(min=1, help="How many steps to show.")] = None,
    only: Annotated[
        Text, typer.Option(help="Only back to materials of this kind, such as oil.")
    ] = None,
    csv: Annotated[Path | None, typer.Option("--csv", help="CSV file to write.")] = None,
    out: Annotated[Path | None, typer.Option("--out", help="PDF file to write.")] = None,
    force: Force = False,
) -> None:
    """Trace a lot back to its inputs and forward to who has it."""
    from cli.screens.trace import Asked, show_trace

    is_back = back or only is not None or not forward
    is_forward = forward or not (back or only is not None)
    show_trace(call, lot, Asked(is_back, is_forward, depth, only, csv, out, force))


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    for function in (due, stock, lot, journal, trace):
        app.command(cls=Verb)(reads(function))
