"""The command `lot`: show one lot: its inputs, what was done, where it went."""

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Lot
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def lot(call: Call, lot: Lot) -> None:
    """Show one lot: its inputs, what was done, where it went."""
    from cli.screens.lots.lot import show_lot

    show_lot(call, lot)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.lots.lot import LotAnswer

    return (LotAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(lot, answers))
