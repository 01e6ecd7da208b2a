"""The command `complain`: record a complaint; say what it points to."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.complete import complete_party
from cli.kit.options import Lot, Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def complain(
    call: Call,
    lot: Lot,
    symptom: Annotated[list[str], typer.Argument(help="What is wrong: cloudy, ring, gas, ...")],
    party: Annotated[
        Text, typer.Option("--from", help="Who complains.", autocompletion=complete_party)
    ] = None,
    opened: Annotated[
        Text, typer.Option(help="When it was opened; yesterday becomes its date.")
    ] = None,
    stored: Annotated[Text, typer.Option(help="Where and how it was kept.")] = None,
    mixed: Annotated[Text, typer.Option(help="How it was mixed: ratio, ice, water.")] = None,
    photo: Annotated[Path | None, typer.Option(help="File of a photo; its hash is kept.")] = None,
    words: Annotated[Text, typer.Option(help="What else was said.")] = None,
    answer_days: Annotated[
        Text, typer.Option("--within", help="In how many days to answer it; default 7.")
    ] = None,
) -> None:
    """Record a complaint; say what it points to."""
    from cli.screens.goods.complain import hash_of, say_complaint
    from ledger.service.goods.complain import complain as verb

    photo_sha256 = hash_of(photo) if photo else None
    book = call.book()
    done = verb(
        book,
        call.how(),
        lot=lot,
        symptom=" ".join(symptom),
        party=party,
        opened=opened,
        stored=stored,
        mixed=mixed,
        photo=photo.name if photo else None,
        photo_sha256=photo_sha256,
        words=words,
        answer_days=answer_days,
    )
    say_complaint(call, book, done)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.goods.complain import ComplainAnswer

    return (ComplainAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(complain, answers))
