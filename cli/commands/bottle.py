"""Commands that bottle and send: bottle, label, send.

Guarantees: labels are recorded as printed only when their sheet could be drawn. Refuses: rules of
their own.
"""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import BestBefore, Code, Force, Labour, Lot, Text
from cli.kit.parsing import Verb
from cli.kit.record import record
from ledger.errors import InputError


def bottle(
    call: Call,
    lot: Lot,
    pack: Annotated[list[str], typer.Argument(help="How many of what size: 15 x 250mL.")],
    bottles: Annotated[Text, typer.Option(help="Lot of the bottles.")] = None,
    caps: Annotated[Text, typer.Option(help="Lot of the closures.")] = None,
    drawn: Annotated[
        Text, typer.Option(help="Bulk volume it took; default what they hold.")
    ] = None,
    fill_check: Annotated[Text, typer.Option(help="Weight of a checked fill in g.")] = None,
    best_before: BestBefore = None,
    labour: Labour = None,
    code: Code = None,
) -> None:
    """Fill a lot into bottles; opens a packed lot."""
    record(
        call,
        "bottle",
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


def label(
    call: Call,
    lot: Lot,
    out: Annotated[Path | None, typer.Option("--out", help="PDF file to write.")] = None,
    count: Annotated[int | None, typer.Option(help="How many; default one a bottle.")] = None,
    used: Annotated[Text, typer.Option(help="How many went on bottles.")] = None,
    spoiled: Annotated[Text, typer.Option(help="How many were spoiled and destroyed.")] = None,
    force: Force = False,
) -> None:
    """Print a sheet of bottle labels, or record what became of them."""
    if out is None:
        if used is None and spoiled is None:
            raise InputError(
                "Nothing was said to print or to record.",
                "Say where the sheet goes with --out, or how many labels were used with --used.",
            )
        record(call, "labels", lot=lot, printed="0", used=used, spoiled=spoiled)
        return
    from cli.kit.answer import recorded
    from cli.screens.label import print_labels

    book = call.book()
    fate = (used, spoiled)
    done = print_labels(book, call.how(), lot, out, count, fate=fate, force=force)
    recorded(call, book, done, out)


def send(
    call: Call,
    lot: Lot,
    amount: Annotated[list[str], typer.Argument(help="How many bottles, or a volume.")],
    to: Annotated[Text, typer.Option("--to", help="Who gets it.")] = None,
    sender: Annotated[Text, typer.Option("--from", help="Who sent it back.")] = None,
    moved_as: Annotated[
        Text,
        typer.Option(
            "--as",
            help="sale, sample, tasting, on-return, returned, breakage, retained or destroyed; "
            "default sale, with --from returned.",
        ),
    ] = None,
    document: Annotated[Text, typer.Option(help="Delivery note, invoice or stall sheet.")] = None,
) -> None:
    """Send goods out, write them off, or take them back."""
    record(
        call,
        "send",
        lot=lot,
        amount=" ".join(amount),
        moved_as=moved_as or ("returned" if sender else None),
        party=to or sender,
        document=document,
    )


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    for function in (bottle, label, send):
        app.command(cls=Verb)(writes(function))
