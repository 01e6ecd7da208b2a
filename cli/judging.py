"""Commands that judge: hold, release, reject, complain.

Guarantees: a release names all that stands in its way at once. Refuses: rules of their own.
"""

from collections.abc import Callable
from typing import Annotated

import typer

from cli.bench import Lot
from cli.call import Call, writes

Text = str | None


def _judge(verdict: str, text: str) -> Callable[..., None]:
    def command(call: Call, lot: Lot) -> None:
        from cli.out import recorded
        from ledger.service.selling import judge

        book = call.book()
        recorded(call, book, judge(book, call.how(), lot=lot, verdict=verdict))

    command.__doc__, command.__name__ = text, verdict
    return command


def complain(
    call: Call,
    lot: Lot,
    symptom: Annotated[list[str], typer.Argument(help="What is wrong: cloudy, ring, gas, ...")],
    party: Annotated[Text, typer.Option("--from", help="Who complains.")] = None,
    opened: Annotated[Text, typer.Option(help="When it was opened.")] = None,
    stored: Annotated[Text, typer.Option(help="Where and how it was kept.")] = None,
    mixed: Annotated[Text, typer.Option(help="How it was mixed: ratio, ice, water.")] = None,
    words: Annotated[Text, typer.Option(help="What else was said.")] = None,
) -> None:
    """Record a complaint."""
    from cli.out import recorded
    from ledger.service.selling import complain as verb

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
        words=words,
    )
    recorded(call, book, done)


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    app.command("hold")(writes(_judge("hold", "Put a lot on hold.")))
    app.command("release")(
        writes(_judge("release", "Release a lot, if nothing stands in the way."))
    )
    app.command("reject")(writes(_judge("reject", "Reject a lot.")))
    app.command()(writes(complain))
