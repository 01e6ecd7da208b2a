"""The command `guide`: show a page of the guide, or list its pages."""

from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def guide(
    call: Call,
    topic: Annotated[Text, typer.Argument(help="Which page; none: list them.")] = None,
) -> None:
    """Show a page of the guide, or list its pages."""
    from cli.screens.guide.guide import list_topics, show_page

    if topic is None:
        list_topics(call)
    else:
        show_page(call, topic)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.guide.guide import PageAnswer, TopicRow

    return (list[TopicRow], PageAnswer)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(guide, answers))
