"""The command that reckons money: cost.

Guarantees: it reads only.
"""

from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.options import Glass, Lot, Pour, Text
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
) -> None:
    """Reckon what a lot cost, a mL, a bottle and a glass."""
    from cli.kit.tables import print_json, print_lines, print_table
    from ledger.service.glass import cost as costing
    from reports.json.glass.cost import cost_answer
    from reports.words.glass import cost as words

    card = costing.cost(
        call.book(), lot, by=call.writer, glass=glass, pour=pour, hour=hour, margin=margin
    )
    if call.json:
        print_json(cost_answer(card))
        return
    print_lines([*words.head(card), ""])
    print_table(words.HEADS, words.rows(card), right="amount,cost")
    print_lines([*words.tail(card), f"Next: {words.step(card)}"])


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.glass.cost import CostAnswer

    return (CostAnswer,)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(reads(cost, answers))
