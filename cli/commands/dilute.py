"""The command `dilute`: say how much spirit and water make a strength."""

from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def dilute(
    call: Call,
    stock: Annotated[str, typer.Argument(help="Strength of the spirit: 96.3%, or 190 proof (US).")],
    target: Annotated[str, typer.Argument(help="Strength wanted: 80%.")],
    amount: Annotated[str, typer.Argument(help="How much is wanted: 1L at 20 °C, or 500g.")],
    temp: Annotated[
        str | None,
        typer.Option(help="Also the volumes with everything at this temperature: 25C or 77F."),
    ] = None,
) -> None:
    """Say how much spirit and water make a strength."""
    from cli.kit.tables import print_json, print_lines
    from ledger.science.liquids.strengths import dilution_asked
    from reports.json.glass.dilute import dilute_answer
    from reports.words.glass.dilute import dilution_lines

    found = dilution_asked(stock, target, amount, temp)
    if call.json:
        print_json(dilute_answer(found))
    else:
        print_lines(dilution_lines(found))


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.glass.dilute import DiluteAnswer

    return (DiluteAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(dilute, answers))
