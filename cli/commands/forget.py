"""The command `forget`: erase for good who a party or a person is."""

from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.complete import complete_party
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def forget(
    call: Call,
    who: Annotated[
        str,
        typer.Argument(
            help="Name or code of a party, or initials of a person.", autocompletion=complete_party
        ),
    ],
    *,
    yes: Annotated[bool, typer.Option("--yes", help="Erase without asking once more.")] = False,
) -> None:
    """Erase for good who a party or a person is; what they did stays."""
    from cli.screens.recall.forget import forget_who

    forget_who(call, who, yes=yes)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.recall.forget import ForgetAnswer

    return (ForgetAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(forget, answers))
