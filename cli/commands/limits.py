"""The command about limits: limits.

Guarantees: without a code it lists, with a code it shows, with anything to say it records.
"""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Text
from cli.kit.parsing import Verb
from cli.kit.record import record
from cli.kit.schema import Kinds


def limits(
    call: Call,
    code: Annotated[Text, typer.Argument(help="Short name of a limit, such as eu-safrole.")] = None,
    substance: Annotated[Text, typer.Option(help="What is limited; alone: list only it.")] = None,
    bound: Annotated[Text, typer.Option(help="at-most, less-than, from or above.")] = None,
    value: Annotated[Text, typer.Option(help="The value, without its unit.")] = None,
    unit: Annotated[
        Text,
        typer.Option(help='"mg/kg body weight", mg/kg, mg/L, "% vol", "% mass" or g/100mL.'),
    ] = None,
    basis: Annotated[Text, typer.Option(help="a-day, as-served or as-sold.")] = None,
    place: Annotated[Text, typer.Option(help="Where it holds; alone: list only those.")] = None,
    citation: Annotated[Text, typer.Option(help="Where it is written.")] = None,
    known_by: Annotated[Text, typer.Option(help="read or recalled.")] = None,
    says: Annotated[Text, typer.Option(help="What it means, in words.")] = None,
    since: Annotated[Text, typer.Option(help="First day it holds.")] = None,
    until: Annotated[Text, typer.Option(help="Last day it holds.")] = None,
) -> None:
    """List limits and their sources, show one, or say one anew."""
    from cli.screens.masters.limits import list_limits, show_limit
    from ledger.service.masters.limits import limit as verb

    if code is None:
        list_limits(call, substance, place)
    elif any((substance, bound, value, unit, basis, place, citation, known_by, says, since, until)):
        record(
            call,
            verb,
            code=code,
            substance=substance,
            bound=bound,
            value=value,
            unit=unit,
            basis=basis,
            place=place,
            citation=citation,
            known_by=known_by,
            says=says,
            since=since,
            until=until,
        )
    else:
        show_limit(call, code)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.desk.recorded import RecordedAnswer
    from reports.json.masters.limits import LimitAnswer

    return (list[LimitAnswer], LimitAnswer, RecordedAnswer)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(limits, answers))
