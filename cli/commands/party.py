"""Commands about parties: party add, party list.

Guarantees: adding somebody again says anew what is given and keeps the rest.
"""

from typing import Annotated

import typer

from cli.kit.call import Call, reads, writes
from cli.kit.options import Text
from cli.kit.parsing import Verb
from cli.kit.record import record
from cli.kit.schema import Kinds


def party_add(
    call: Call,
    name: Annotated[str, typer.Argument(help="Name as receipts and deliveries have it.")],
    phone: Annotated[Text, typer.Option(help="Telephone number.")] = None,
    email: Annotated[Text, typer.Option(help="Mail address.")] = None,
    address: Annotated[Text, typer.Option(help="Postal address in one line.")] = None,
    words: Annotated[Text, typer.Option(help="Whom to ask for, when they are there.")] = None,
    gln: Annotated[Text, typer.Option(help="Its number as a party (GLN).")] = None,
) -> None:
    """Say how to reach a supplier or a customer; what is not given stays."""
    from ledger.service.masters.party import party as verb

    record(call, verb, name=name, phone=phone, email=email, address=address, words=words, gln=gln)


def party_list(call: Call) -> None:
    """List the suppliers and customers of whom the book knows more than the name."""
    from cli.screens.masters.party import list_parties

    list_parties(call)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.masters.party import PartyRow

    return (list[PartyRow],)


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    group = typer.Typer(
        help="Suppliers and customers, and how to reach them.",
        no_args_is_help=True,
        rich_markup_mode=None,
    )
    group.command("add", cls=Verb)(writes(party_add))
    group.command("list", cls=Verb)(reads(party_list, answers))
    app.add_typer(group, name="party")
