"""Commands that set up: init, demo, house, person.

Guarantees: bodies of a few lines over the verbs of the book. Refuses: rules of their own.
"""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads, writes
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
    from ledger.service.masters import house as verbs

    book = verbs.init(
        call.where if call.ledger else new_place(),
        name=house,
        currency=currency,
        address=address,
        country=country,
        time_zone=time_zone,
        fluid_ounce=fluid_ounce,
        phone=phone,
    )
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


def demo(
    call: Call,
    folder: Annotated[
        Path, typer.Argument(help="Folder for the book and its papers; made if missing.")
    ] = Path("demo"),
) -> None:
    """Play an invented season into a new book; trace a bottle."""
    from cli.screens.demo import demonstrate

    demonstrate(call, folder)


def house(
    call: Call,
    name: Annotated[Text, typer.Option(help="The maker's name.")] = None,
    address: Annotated[Text, typer.Option(help="Postal address in one line.")] = None,
    country: Annotated[Text, typer.Option(help="Two-letter country code.")] = None,
    currency: Annotated[Text, typer.Option(help="Money that costs are in.")] = None,
    time_zone: Annotated[Text, typer.Option(help="Such as Europe/Dublin.")] = None,
    fluid_ounce: Annotated[Text, typer.Option(help="US or imperial.")] = None,
    hour: Annotated[Text, typer.Option(help="What an hour of work costs.")] = None,
    phone: Annotated[Text, typer.Option(help="Telephone number.")] = None,
) -> None:
    """Show the house, or say anew what is given."""
    from cli.kit.answer import recorded
    from cli.screens.material import say_house
    from ledger.service.masters import house as verbs

    given = {
        "name": name,
        "address": address,
        "country": country,
        "currency": currency,
        "time_zone": time_zone,
        "fluid_ounce": fluid_ounce,
        "hour": hour,
        "phone": phone,
    }
    book = call.book()
    if any(given.values()):
        recorded(call, book, verbs.house(book, call.how(), **given))
    else:
        say_house(call, book)


def person_add(
    call: Call,
    initials: Annotated[str, typer.Argument(help="One to four letters.")],
    name: Annotated[str, typer.Argument(help="Full name.")],
    role: Annotated[Text, typer.Option(help="What the person does.")] = None,
) -> None:
    """Add a person who writes in the book."""
    from cli.kit.answer import recorded
    from ledger.service.masters.person import person

    book = call.book()
    recorded(call, book, person(book, call.how(), initials=initials, name=name, role=role))


def person_list(call: Call) -> None:
    """List the people in the book."""
    from cli.screens.material import list_people

    list_people(call)


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    app.command(cls=Verb)(writes(init))
    app.command(cls=Verb)(reads(demo))
    app.command(cls=Verb)(writes(house))
    groups = {
        "person": ("People who write in the book.", (("add", person_add), ("list", person_list))),
    }
    for name, (text, commands) in groups.items():
        group = typer.Typer(help=text, no_args_is_help=True, rich_markup_mode=None)
        for verb, function in commands:
            shared = writes if verb == "add" else reads
            group.command(verb, cls=Verb)(shared(function))
        app.add_typer(group, name=name)
