"""Commands that judge: hold, release, reject, complain.

Guarantees: a release names all that stands in its way at once. Refuses: rules of their own.
"""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.options import Lot, Text
from cli.kit.parsing import Verb
from cli.kit.record import record


def hold(call: Call, lot: Lot) -> None:
    """Put a lot on hold."""
    record(call, "judge", lot=lot, verdict="hold")


def release(call: Call, lot: Lot) -> None:
    """Release a lot, if nothing stands in the way."""
    record(call, "judge", lot=lot, verdict="release")


def reject(call: Call, lot: Lot) -> None:
    """Reject a lot."""
    record(call, "judge", lot=lot, verdict="reject")


def complain(
    call: Call,
    lot: Lot,
    symptom: Annotated[list[str], typer.Argument(help="What is wrong: cloudy, ring, gas, ...")],
    party: Annotated[Text, typer.Option("--from", help="Who complains.")] = None,
    opened: Annotated[Text, typer.Option(help="When it was opened.")] = None,
    stored: Annotated[Text, typer.Option(help="Where and how it was kept.")] = None,
    mixed: Annotated[Text, typer.Option(help="How it was mixed: ratio, ice, water.")] = None,
    photo: Annotated[Path | None, typer.Option(help="File of a photo; its hash is kept.")] = None,
    words: Annotated[Text, typer.Option(help="What else was said.")] = None,
) -> None:
    """Record a complaint; say what it points to."""
    from cli.screens.complain import complain_of

    complain_of(
        call,
        photo,
        lot=lot,
        symptom=" ".join(symptom),
        party=party,
        opened=opened,
        stored=stored,
        mixed=mixed,
        words=words,
    )


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    for function in (hold, release, reject, complain):
        app.command(cls=Verb)(writes(function))
