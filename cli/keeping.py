"""Commands that keep the book: correct, strike, verify.

Guarantees: nothing is changed in place. Refuses: rules of their own.
"""

from typing import Annotated

import typer

from cli.call import Call, reads, writes
from cli.options import EntryNumber
from cli.parsing import Verb
from cli.verbs import record


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


def verify(call: Call) -> None:
    """Recompute the whole book and name what does not fit."""
    from cli.verifying import verify_book

    verify_book(call)


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    app.command(cls=Verb)(writes(correct))
    app.command(cls=Verb)(writes(strike))
    app.command(cls=Verb)(reads(verify))
