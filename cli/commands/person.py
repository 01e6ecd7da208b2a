"""The command `person`: people who write in the book."""

from typing import Annotated

import typer

from cli.kit.call import Call, reads, writes
from cli.kit.options import Text
from cli.kit.parsing import Verb
from cli.kit.record import record
from cli.kit.schema import Kinds


def person_add(
    call: Call,
    initials: Annotated[str, typer.Argument(help="One to four letters.")],
    name: Annotated[str, typer.Argument(help="Full name.")],
    role: Annotated[Text, typer.Option(help="What the person does.")] = None,
) -> None:
    """Add a person who writes in the book."""
    from ledger.service.masters.person import person as verb

    record(call, verb, initials=initials, name=name, role=role)


def person_list(call: Call) -> None:
    """List the people in the book."""
    from cli.screens.masters.person import list_people

    list_people(call)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.masters.person import PersonRow

    return (list[PersonRow],)


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    group = typer.Typer(
        help="People who write in the book.", no_args_is_help=True, rich_markup_mode=None
    )
    group.command("add", cls=Verb)(writes(person_add))
    group.command("list", cls=Verb)(reads(person_list, answers))
    app.add_typer(group, name="person")
