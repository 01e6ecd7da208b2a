"""The command that says what a glass delivers: serving.

Guarantees: it reads only.
"""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Force, Glass, Lot, Pour, Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def serving(
    call: Call,
    lot: Lot,
    glass: Glass = None,
    pour: Pour = None,
    dose: Annotated[
        Text, typer.Option(help="Essence to a syrup; default as its formula says, or 30mL.")
    ] = None,
    adult: Annotated[Text, typer.Option(help="Body weight of the adult; default 60kg.")] = None,
    child: Annotated[Text, typer.Option(help="Body weight of the child; default 20kg.")] = None,
    explain: Annotated[
        bool, typer.Option("--explain", help="Show where every figure comes from.")
    ] = False,
    out: Annotated[Path | None, typer.Option("--out", help="PDF file to write.")] = None,
    force: Force = False,
) -> None:
    """Say what a glass delivers: strength, sugar, oils, limits."""
    from cli.kit.files import check_place
    from cli.screens.glass.serving import show_card
    from ledger.service.glass.serving import serving as reckon

    if out:
        check_place(out, force=force)
    book = call.book()
    card = reckon(
        book,
        lot,
        by=call.writer,
        glass=glass,
        pour=pour,
        dose=dose,
        adult=adult,
        child=child,
    )
    if out:
        from cli.kit.papers import put_card
        from reports.words.glass.cards import serving_paper

        put_card(call, book, lambda frame: serving_paper(card, frame), out, force=force)
        return
    show_card(call, card, explain=explain)


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.glass.serving import ServingAnswer
    from reports.json.kit.answer import File

    return (ServingAnswer, File)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(serving, answers))
