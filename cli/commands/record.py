"""Commands that print papers: sheet, record.

Guarantees: a file that is there is not written over unless asked. Refuses: rules of their own.
"""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Force, Lot, Out
from cli.kit.parsing import Verb


def record(
    call: Call,
    lot: Lot,
    out: Out,
    force: Force = False,
) -> None:
    """Print the record of a batch or a delivery."""
    from cli.kit.answer import say, step_for
    from cli.screens.label import print_record

    book = call.book()
    found = print_record(book, lot, out, by=call.writer, force=force)
    code = found.state.code
    lines = f"The record of {code} is in {out}.", f"Next: {step_for(book, found)}"
    say(call, {"lot": code, "out": str(out)}, *lines)


def sheet(
    call: Call,
    lot: Lot,
    out: Annotated[Path | None, typer.Option("--out", help="PDF file to write.")] = None,
    force: Force = False,
) -> None:
    """Print or show the batch sheet that a batch is made from."""
    from cli.screens.sheet import show_sheet

    show_sheet(call, lot, out, force=force)


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    for function in (sheet, record):
        app.command(cls=Verb)(reads(function))
