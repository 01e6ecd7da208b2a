"""The command `syrup`: say how strong a simple syrup is, and whether it stays clear."""

from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def syrup(
    call: Call,
    asked: Annotated[
        str,
        typer.Argument(help='Parts of sugar to water, 3:2; or 65Bx, "850 g/L" or "1.33 SG".'),
    ],
    by: Annotated[str | None, typer.Option(help="For parts: weight or volume.")] = None,
    bulk: Annotated[
        str | None, typer.Option(help="For parts by volume: what loose sugar weighs, 0.85 g/mL.")
    ] = None,
    read_at: Annotated[
        str | None,
        typer.Option(help="The °Bx were read with a glass hydrometer at this temperature: 28C."),
    ] = None,
    kept_at: Annotated[
        str | None, typer.Option(help="Temperature it is kept at: 4C; default 20 °C.")
    ] = None,
) -> None:
    """Say how strong a simple syrup is, and whether it stays clear."""
    from cli.kit.tables import print_json, print_lines
    from ledger.science.liquids.syrup_asked import syrup_asked
    from reports.json.glass.syrup import syrup_told
    from reports.words.glass.syrup import syrup_lines

    found = syrup_asked(asked, by, bulk, read_at, kept_at)
    if call.json:
        print_json(syrup_told(found))
    else:
        print_lines(syrup_lines(found))


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.glass.syrup import SyrupTold

    return (SyrupTold,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(syrup, answers))
