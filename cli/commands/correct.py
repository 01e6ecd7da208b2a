"""Commands that keep the book: correct, strike, verify, seal, prove.

Guarantees: nothing is changed in place. Refuses: rules of their own.
"""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads, writes
from cli.kit.complete import complete_lot
from cli.kit.options import EntryNumber, Force
from cli.kit.parsing import Verb
from cli.kit.record import record
from cli.kit.seals import SealText


def correct(
    call: Call,
    entry: EntryNumber,
    change: Annotated[
        list[str] | None, typer.Option("--set", help="What is right: amount=32mL.")
    ] = None,
) -> None:
    """Correct an entry by a new one; the old one stays readable."""
    record(call, "correct", entry=entry, changes="; ".join(change or []))


def strike(call: Call, entry: EntryNumber) -> None:
    """Strike out an entry made by mistake; it stays readable."""
    record(call, "strike", entry=entry)


def verify(
    call: Call,
    seal: SealText = None,
    since: Annotated[
        str | None,
        typer.Option(metavar="FILE|TEXT", help="Read only what came after this seal."),
    ] = None,
) -> None:
    """Recompute the whole book and name what does not fit."""
    from cli.screens.verify import verify_book

    verify_book(call, seal, since)


def seal(
    call: Call,
    out: Annotated[Path | None, typer.Option(help="Also write the lines to this file.")] = None,
    force: Force = False,
) -> None:
    """Print the seal of the book: house, number of entries, root."""
    from cli.screens.verify import print_seal

    print_seal(call, out, force=force)


def prove(
    call: Call,
    lot: Annotated[
        str | None,
        typer.Argument(help="Code of the lot, or its ending.", autocompletion=complete_lot),
    ] = None,
    out: Annotated[Path | None, typer.Option(help="File to write the proof to.")] = None,
    check: Annotated[
        Path | None, typer.Option(help="Check this proof; needs no book.", metavar="FILE")
    ] = None,
    seal: SealText = None,
    force: Force = False,
) -> None:
    """Prove what the book says of a lot, or check such a proof."""
    from cli.screens.prove import check_proof, write_proof

    if check:
        check_proof(call, check, seal, lot, out)
    else:
        write_proof(call, lot, out, seal, force=force)


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    app.command(cls=Verb)(writes(correct))
    app.command(cls=Verb)(writes(strike))
    app.command(cls=Verb)(reads(verify))
    app.command(cls=Verb)(reads(seal))
    app.command(cls=Verb)(reads(prove))
