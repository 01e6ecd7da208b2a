"""The command `journal`: list entries as they were written, corrections included."""

from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Force, LotOrNone
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds
from cli.kit.sheets import Csv


def journal(
    call: Call,
    lot: LotOrNone = None,
    last: Annotated[int, typer.Option(min=0, help="How many; 0 for all.")] = 20,
    entry: Annotated[int | None, typer.Option(help="One entry with all its corrections.")] = None,
    csv: Csv = None,
    force: Force = False,
) -> None:
    """List entries as they were written, corrections included."""
    from cli.screens.lots.journal import show_journal

    show_journal(call, lot, last, entry, csv, force=force)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.lots.journal import JournalRow

    return (list[JournalRow],)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(journal, answers))
