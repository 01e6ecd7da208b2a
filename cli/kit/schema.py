"""The option that prints the JSON Schema of a command's answer.

Guarantees: it opens no book and asks for no other word of the command; nothing of answers is
loaded before it is given. The help leaves it out, since a person at the bench has no use for it.
"""

import inspect
from collections.abc import Callable
from typing import Annotated

import typer

Kinds = tuple[type[object], ...]
"""What a command answers: one or several classes of answers, or lists of such."""
Answers = Callable[[], Kinds]
"""Returns it, and loads it only then."""
SCHEMA = "json_schema"
"""Name of the option as a parameter."""


def recorded() -> Kinds:
    """Return what a command answers that records."""
    from reports.json.desk.recorded import RecordedAnswer

    return (RecordedAnswer,)


def schema_option(answers: Answers) -> inspect.Parameter:
    """Return the option as a parameter of a command that answers so."""

    def show(context: typer.Context, asked: bool) -> None:
        if asked:
            print_schema(answers(), context.command_path)
            raise typer.Exit

    option = typer.Option(
        "--json-schema",
        help="Print the JSON Schema of the answer.",
        hidden=True,
        is_eager=True,
        callback=show,
    )
    return inspect.Parameter(
        SCHEMA,
        inspect.Parameter.KEYWORD_ONLY,
        default=False,
        annotation=Annotated[bool, option],
    )


def print_schema(answers: Kinds, command: str) -> None:
    """Print the JSON Schema of what a command answers."""
    import json

    from reports.json.kit.schema import schema_of

    print(json.dumps(schema_of(answers, command), ensure_ascii=False, indent=2))
