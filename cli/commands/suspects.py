"""The command `suspects`: say what failed lots share, and how sure that is."""

from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.complete import complete_lot
from cli.kit.options import Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def suspects(
    call: Call,
    lots: Annotated[
        list[str] | None,
        typer.Argument(
            help="Lots that failed; none: those that looked worse than wanted or were complained "
            "of.",
            autocompletion=complete_lot,
        ),
    ] = None,
    complaints: Annotated[
        bool, typer.Option("--complaints", help="Only lots complained of.")
    ] = False,
    worse_than: Annotated[
        Text, typer.Option("--worse-than", metavar="GRADE", help="Only lots that looked worse.")
    ] = None,
    since: Annotated[
        Text, typer.Option("--from", metavar="DATE", help="Only lots begun then or later.")
    ] = None,
    explain: Annotated[
        bool, typer.Option("--explain", help="Also how it is reckoned, and every suspect.")
    ] = False,
) -> None:
    """Say what failed lots share that clear ones do not, and how sure that is."""
    from cli.screens.causes.suspects import show_suspects

    show_suspects(
        call,
        tuple(lots or ()),
        complaints=complaints,
        worse_than=worse_than,
        since=since,
        explain=explain,
    )


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.causes.suspects import SuspectsAnswer

    return (SuspectsAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(suspects, answers))
