"""The command `complaints`: list complaints, open ones or those of a lot, a customer, a time."""

from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.complete import complete_party
from cli.kit.options import Force, LotOrNone, Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds
from cli.kit.sheets import Csv


def complaints(
    call: Call,
    lot: LotOrNone = None,
    only_open: Annotated[bool, typer.Option("--open", help="Only what is not closed.")] = False,
    party: Annotated[
        Text, typer.Option("--party", help="Only by this customer.", autocompletion=complete_party)
    ] = None,
    outcome: Annotated[
        Text, typer.Option(help="Only explained, replaced, held, recalled or not-ours.")
    ] = None,
    since: Annotated[Text, typer.Option("--from", help="Only of this day and later.")] = None,
    until: Annotated[Text, typer.Option("--to", help="Only of this day and before.")] = None,
    csv: Csv = None,
    force: Force = False,
) -> None:
    """List complaints: what is open, and what became of the others."""
    from cli.screens.lots.complaints import Wanted, list_complaints

    wanted = Wanted(lot, only_open, party, outcome, (since, until), csv, force)
    list_complaints(call, wanted)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.lots.complaints import ComplaintRow

    return (list[ComplaintRow],)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(complaints, answers))
