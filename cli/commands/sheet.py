"""The command `sheet`: print or show the batch sheet that a batch is made from."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.complete import complete_lot
from cli.kit.options import Force, Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def sheet(
    call: Call,
    lot: Annotated[
        Text,
        typer.Argument(
            help="Code of the lot, or its ending; . for the lot in hand.",
            autocompletion=complete_lot,
        ),
    ] = None,
    out: Annotated[Path | None, typer.Option("--out", help="PDF file to write.")] = None,
    formula: Annotated[
        Text, typer.Option(metavar="CODE", help="By a formula, before its batch is begun.")
    ] = None,
    target: Annotated[
        Text, typer.Option(metavar="VOLUME", help="Volume of such a batch; default the formula's.")
    ] = None,
    force: Force = False,
    blank_csv: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Write the columns of a sheet that import reads."),
    ] = None,
    form: Annotated[
        str, typer.Option(metavar="FORM", help="Whose columns: of a batch or of a stall.")
    ] = "batch",
) -> None:
    """Print or show the batch sheet that a batch is made from."""
    from cli.screens.bench.sheet import show_formula_sheet, show_sheet
    from cli.screens.copies.take_in import blank_form
    from ledger.errors import InputError

    if blank_csv is not None:
        blank_form(call, form, blank_csv, force=force)
    elif formula is not None:
        if lot is not None:
            raise InputError(
                "A sheet is of one batch, and both a lot and a formula are named.",
                "Leave one of the two out.",
            )
        show_formula_sheet(call, formula, target, out, force=force)
    elif lot is None:
        raise InputError(
            "A sheet is of one batch, and none is named.",
            "Name its lot, or --formula CODE before it is begun, or give --blank-csv FILE for the "
            "columns to type it into.",
        )
    else:
        show_sheet(call, lot, out, force=force)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.bench.sheet import SheetAnswer
    from reports.json.kit.answer import File

    return (SheetAnswer, File)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(sheet, answers))
