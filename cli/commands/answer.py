"""The command `answer`: say what became of a complaint, and who told the customer."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Text
from cli.kit.parsing import Verb
from cli.kit.record import record


def answer(
    call: Call,
    complaint: Annotated[str, typer.Argument(help="Number of the complaint.")],
    outcome: Annotated[
        list[str], typer.Argument(help="explained, replaced, held, recalled or not ours.")
    ],
    told_by: Annotated[
        Text, typer.Option("--told-by", help="Who told the customer; default who writes.")
    ] = None,
    told_on: Annotated[
        Text,
        typer.Option("--told", help="When the customer was told: today, 2026-03-02; closes it."),
    ] = None,
    close: Annotated[
        bool, typer.Option("--close", help="Close it though the customer was not told.")
    ] = False,
    words: Annotated[Text, typer.Option(help="What was found, or said.")] = None,
) -> None:
    """Say what became of a complaint, and who told the customer."""
    from ledger.service.goods.answer import answer as verb

    record(
        call,
        verb,
        complaint=complaint,
        outcome=" ".join(outcome),
        told_by=told_by,
        told_on=told_on,
        closed="yes" if close else None,
        words=words,
    )


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(answer))
