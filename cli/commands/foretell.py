"""The command `foretell`: how clear a lot or a formula will be.

Guarantees: of a formula it records nothing; of a lot one entry, before anybody looks.
"""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.complete import complete_lot
from cli.kit.options import Pour, Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def foretell(
    call: Call,
    what: Annotated[
        Text,
        typer.Argument(
            metavar="FORMULA|LOT",
            help="Code of a formula, or of a lot; . for the lot in hand.",
            autocompletion=complete_lot,
        ),
    ] = None,
    pour: Pour = None,
    temp: Annotated[
        Text, typer.Option(help="Temperature of the glass, such as 5C; the figures are of 20 °C.")
    ] = None,
    score: Annotated[
        bool, typer.Option("--score", help="Show how many looks fell inside their forecast.")
    ] = False,
) -> None:
    """Foretell how clear a lot or a formula will be; keep the score."""
    from cli.screens.glass.foretell import show_forecast, show_score

    if score:
        show_score(call)
    else:
        show_forecast(call, what, pour, temp)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.glass.foretell import ForetellAnswer, ScoreTold

    return (ForetellAnswer, list[ScoreTold])


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(foretell, answers))
