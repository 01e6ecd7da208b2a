"""The command `verify`: recompute the whole book and name what does not fit."""

from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds
from cli.kit.seals import SealText


def verify(
    call: Call,
    seal: SealText = None,
    since: Annotated[
        str | None,
        typer.Option(metavar="FILE|TEXT", help="Read only what came after this seal."),
    ] = None,
    *,
    since_last: Annotated[
        bool,
        typer.Option(
            "--since-last",
            help="Read only what came after the last verification here that found all sound.",
        ),
    ] = False,
) -> None:
    """Recompute the whole book and name what does not fit."""
    from cli.screens.evidence.verify import verify_book

    verify_book(call, seal, since, since_last=since_last)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.evidence.verify import VerifyAnswer

    return (VerifyAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(verify, answers))
