"""Commands that reckon without a book: dilute, syrup.

Guarantees: they read and write no book. Refuses: sums of their own; those are `ledger.science`.
"""

from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.parsing import Verb


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
    from reports.words.glass.dilute import dilution_lines, dilution_plain

    found = dilution_asked(stock, target, amount, temp)
    if call.json:
        print_json(dilution_plain(found))
    else:
        print_lines(dilution_lines(found))


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
    from reports.words.glass.syrup import syrup_lines, syrup_plain

    found = syrup_asked(asked, by, bulk, read_at, kept_at)
    if call.json:
        print_json(syrup_plain(found))
    else:
        print_lines(syrup_lines(found))


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    for verb in (dilute, syrup):
        app.command(cls=Verb)(reads(verb))
