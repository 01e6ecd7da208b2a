"""The command `init`: make a new book."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def init(
    call: Call,
    house: Annotated[Text, typer.Option(help="The maker's name.")] = None,
    currency: Annotated[Text, typer.Option(help="Money that costs are in, such as EUR.")] = None,
    address: Annotated[Text, typer.Option(help="Postal address in one line.")] = None,
    country: Annotated[Text, typer.Option(help="Two-letter country code.")] = None,
    time_zone: Annotated[
        Text, typer.Option(help="Such as Europe/Dublin; default this machine's.")
    ] = None,
    fluid_ounce: Annotated[Text, typer.Option(help="US or imperial; default US.")] = None,
    phone: Annotated[Text, typer.Option(help="Telephone number.")] = None,
    person: Annotated[
        Text, typer.Option(help='Who writes in it: initials and name, as "AB Ada Brook".')
    ] = None,
    shelf: Annotated[
        Text, typer.Option(help="Usual materials to begin with: their short names, or all.")
    ] = None,
    with_formulas: Annotated[
        bool, typer.Option("--with-formulas", help="A starter formula of each oil of the shelf.")
    ] = False,
) -> None:
    """Make a new book; at a terminal it asks for what is not given."""
    from cli.kit.ask import can_ask, missing
    from cli.kit.place import tell_place
    from cli.screens.masters.init import Beginning, asked, make_book

    begun = Beginning(
        house=house or "",
        currency=currency or "",
        zone=time_zone or machine_zone(),
        is_zone_told=bool(time_zone),
        address=address,
        country=country,
        fluid_ounce=fluid_ounce,
        phone=phone,
        person=person,
        shelf=shelf,
        with_formulas=with_formulas,
    )
    if not (house and currency):
        if call.json or not can_ask():
            raise missing(f"option '{'--currency' if house else '--house'}'")
        begun = asked(begun)
    where = call.where if call.ledger else new_place()
    make_book(call, where, begun)
    tell_place(where)


def machine_zone() -> str:
    """Return the name of this machine's time zone, UTC where it has none."""
    from tzlocal import get_localzone_name

    from ledger.service.desk.clock import zones

    zone = get_localzone_name()
    return zone if zone in zones() else "UTC"


def new_place() -> str:
    """Return where a new book goes: as set in the environment, else here."""
    import os

    from cli.kit.call import BOOK_NAME

    return os.environ.get("POTTLE_LEDGER") or BOOK_NAME


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.masters.init import InitAnswer

    return (InitAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(init, answers))
