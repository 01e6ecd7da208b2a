"""The command `label`: print a sheet of bottle labels, or record what became of them."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.complete import complete_lot
from cli.kit.options import Force, Lot, Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds
from ledger.errors import InputError


def label(
    call: Call,
    lot: Lot,
    out: Annotated[Path | None, typer.Option("--out", help="PDF file to write.")] = None,
    count: Annotated[
        int | None, typer.Option(help="How many; default one a bottle, one specimen.")
    ] = None,
    used: Annotated[Text, typer.Option(help="How many went on bottles.")] = None,
    spoiled: Annotated[Text, typer.Option(help="How many were spoiled and destroyed.")] = None,
    stock: Annotated[
        Text,
        typer.Option(help="Lot of blank labels they are printed on.", autocompletion=complete_lot),
    ] = None,
    specimen: Annotated[
        bool,
        typer.Option("--specimen", help="For the record, with SPECIMEN across; for no bottle."),
    ] = False,
    nutrition: Annotated[
        bool, typer.Option("--nutrition", help="Print the nutrition too, where it fits.")
    ] = False,
    force: Force = False,
) -> None:
    """Print a sheet of bottle labels, or record what became of them."""
    from cli.screens.goods.label import Fate, print_labels, say_labels
    from ledger.service.goods.label import labels as verb

    if out is None:
        if used is None and spoiled is None:
            raise InputError(
                "Nothing was said to print or to record.",
                "Say where the sheet goes with --out, or how many labels were used with --used.",
            )
        book = call.book()
        say_labels(
            call, book, verb(book, call.how(), lot=lot, printed="0", used=used, spoiled=spoiled)
        )
        return
    book, fate = call.book(), Fate(used, spoiled, stock)
    sheet = print_labels(
        book,
        call.how(),
        lot,
        out,
        count,
        fate=fate,
        specimen=specimen,
        nutrition=nutrition,
        force=force,
    )
    say_labels(call, book, sheet.done, sheet)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.goods.label import LabelAnswer

    return (LabelAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(label, answers))
