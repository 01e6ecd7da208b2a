"""The command `init`: make a new book."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def init(
    call: Call,
    house: Annotated[str, typer.Option(help="The maker's name.")],
    currency: Annotated[str, typer.Option(help="Money that costs are in, such as EUR.")],
    address: Annotated[Text, typer.Option(help="Postal address in one line.")] = None,
    country: Annotated[Text, typer.Option(help="Two-letter country code.")] = None,
    time_zone: Annotated[
        Text, typer.Option(help="Such as Europe/Dublin; default this machine's.")
    ] = None,
    fluid_ounce: Annotated[Text, typer.Option(help="US or imperial; default US.")] = None,
    phone: Annotated[Text, typer.Option(help="Telephone number.")] = None,
) -> None:
    """Make a new book."""
    from cli.kit.answer import say
    from ledger.service.masters.house import init as verb
    from reports.json.masters.init import init_answer

    zone = time_zone or machine_zone()
    new = verb(
        call.where if call.ledger else new_place(),
        name=house,
        currency=currency,
        address=address,
        country=country,
        time_zone=zone,
        fluid_ounce=fluid_ounce,
        phone=phone,
    )
    book = call.at_end.enter_context(new)
    say(
        call,
        lambda: init_answer(book.shown, zone),
        f"Made a new book for {house} at {book.shown}.",
        *(() if time_zone else (_told(zone),)),
        'Next: pottle person add INITIALS "NAME"',
    )


def machine_zone() -> str:
    """Return the name of this machine's time zone, UTC where it has none."""
    from zoneinfo import available_timezones

    from tzlocal import get_localzone_name

    zone = get_localzone_name()
    return zone if zone in available_timezones() else "UTC"


def _told(zone: str) -> str:
    return (
        f"Times without a zone are read on the clock of {zone}, which is this machine's; for "
        "another: pottle house --time-zone ZONE"
    )


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
