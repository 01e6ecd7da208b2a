"""The command that reckons money: cost.

Guarantees: it reads only.
"""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Force, Glass, Lot, Pour, Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds


def cost(
    call: Call,
    lot: Lot,
    glass: Glass = None,
    pour: Pour = None,
    hour: Annotated[
        Text, typer.Option(help="What an hour of work costs; default as the house says.")
    ] = None,
    margin: Annotated[
        Text, typer.Option(help="Wanted margin in % of the price: says the price.")
    ] = None,
    out: Annotated[Path | None, typer.Option("--out", help="PDF file to write.")] = None,
    force: Force = False,
) -> None:
    """Reckon what a lot cost, a mL, a bottle and a glass."""
    from cli.kit.files import check_place
    from cli.kit.tables import print_json, print_lines, print_table
    from ledger.service.glass import cost as costing
    from reports.json.glass.cost import cost_answer
    from reports.words.glass import cost as words

    if out:
        check_place(out, force=force)
    book = call.book()
    card = costing.cost(book, lot, by=call.writer, glass=glass, pour=pour, hour=hour, margin=margin)
    if out:
        from cli.kit.papers import put_card
        from reports.words.glass.cards import cost_paper

        put_card(call, book, lambda frame: cost_paper(card, frame), out, force=force)
        return
    if call.json:
        print_json(cost_answer(card))
        return
    print_lines([*words.head(card), ""])
    print_table(words.HEADS, words.rows(card), right="amount,cost")
    print_lines([*words.tail(card), f"Next: {words.step(card)}"])


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.glass.cost import CostAnswer
    from reports.json.kit.answer import File

    return (CostAnswer, File)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(cost, answers))
