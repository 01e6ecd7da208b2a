"""The command `init`: make a new book."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Text
from cli.kit.parsing import Verb


def init(
    call: Call,
    house: Annotated[str, typer.Option(help="The maker's name.")],
    currency: Annotated[str, typer.Option(help="Money that costs are in, such as EUR.")],
    address: Annotated[Text, typer.Option(help="Postal address in one line.")] = None,
    country: Annotated[Text, typer.Option(help="Two-letter country code.")] = None,
    time_zone: Annotated[Text, typer.Option(help="Such as Europe/Dublin; default UTC.")] = None,
    fluid_ounce: Annotated[Text, typer.Option(help="US or imperial; default US.")] = None,
    phone: Annotated[Text, typer.Option(help="Telephone number.")] = None,
) -> None:
    """Make a new book."""
    from cli.kit.answer import say
    from ledger.service.masters.house import init as verb

    new = verb(
        call.where if call.ledger else new_place(),
        name=house,
        currency=currency,
        address=address,
        country=country,
        time_zone=time_zone,
        fluid_ounce=fluid_ounce,
        phone=phone,
    )
    book = call.at_end.enter_context(new)
    say(
        call,
        {"entry": 1, "kind": "house", "ledger": book.where},
        f"Made a new book for {house} at {book.where}.",
        'Next: pottle person add INITIALS "NAME"',
    )


def new_place() -> str:
    """Return where a new book goes: as set in the environment, else here."""
    import os

    from cli.kit.call import BOOK_NAME

    return os.environ.get("POTTLE_LEDGER") or BOOK_NAME


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(init))
