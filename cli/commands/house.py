"""The command `house`: show the house, or say anew what is given."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


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
    doubt: Annotated[
        Text, typer.Option(help='What instruments may be off by: "cylinder=1; scale=0.5".')
    ] = None,
    keep: Annotated[
        Text, typer.Option(help="Months that records are kept beyond their last date.")
    ] = None,
    web: Annotated[
        Text, typer.Option(metavar="URL", help="Where its pages are, and labels lead; or none.")
    ] = None,
    gln: Annotated[
        Text, typer.Option(help="Its number as a place and a party (GLN), or none.")
    ] = None,
    company_prefix: Annotated[
        Text, typer.Option(help="Digits that its numbers of GS1 begin with; numbers cases.")
    ] = None,
    gtin: Annotated[
        list[str] | None,
        typer.Option(metavar="WHAT=NUMBER", help="Number of an article; WHAT= takes it away."),
    ] = None,
) -> None:
    """Show the house, or say anew what is given."""
    from cli.kit.record import record
    from cli.screens.masters.house import say_house
    from ledger.service.masters.house import house as verb

    others = (fluid_ounce, hour, phone, doubt, keep, web, gln, company_prefix, gtin)
    if any((name, address, country, currency, time_zone, *others)):
        record(
            call,
            verb,
            name=name,
            address=address,
            country=country,
            currency=currency,
            time_zone=time_zone,
            fluid_ounce=fluid_ounce,
            hour=hour,
            phone=phone,
            doubt=doubt,
            keep=keep,
            web=web,
            gln=gln,
            company_prefix=company_prefix,
            gtin="; ".join(gtin or []) or None,
        )
    else:
        say_house(call, call.book())


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.desk.recorded import RecordedAnswer
    from reports.json.masters.house import HouseAnswer

    return (HouseAnswer, RecordedAnswer)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(house, answers))
