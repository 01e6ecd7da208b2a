"""The command `strength`: say a strength in every measure, and what an amount holds."""

from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def strength(
    call: Call,
    asked: Annotated[
        str,
        typer.Argument(
            metavar="STRENGTH",
            help='Strength of the spirit: 96.3%, "94 % w/w" or "190 proof" (US).',
        ),
    ],
    amount: Annotated[
        str | None,
        typer.Argument(help="How much: 1L, or as a scale shows it 500g."),
    ] = None,
    temp: Annotated[
        str | None,
        typer.Option(help="Temperature the volume was measured at: 25C or 77F; default 20 °C."),
    ] = None,
) -> None:
    """Say a strength in every measure, and what an amount holds."""
    from cli.kit.tables import print_json, print_lines
    from ledger.science.liquids.strength_asked import strength_asked
    from reports.json.glass.strength import strength_told
    from reports.words.glass.strength import strength_lines

    found = strength_asked(asked, amount, temp)
    if call.json:
        print_json(strength_told(found))
    else:
        print_lines(strength_lines(found))


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.glass.strength import StrengthTold

    return (StrengthTold,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(strength, answers))
