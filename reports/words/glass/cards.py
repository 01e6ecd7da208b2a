"""The serving card and the cost card as papers show them.

Guarantees: the same words as on the screen, in the same order.
"""

from ledger.service.glass.card import ServingCard
from ledger.service.glass.cost import CostCard
from reports.kit.card import Card, CardPart, rows_of
from reports.kit.frame import Frame, Heading
from reports.words.glass import cost, serving
from reports.words.glass.declaration import declared_lines, nutrition_table
from reports.words.glass.limits import close_lines, limit_table


def serving_paper(card: ServingCard, frame: Frame) -> Card:
    """Return the serving card as a paper shows it."""
    glass, limits, facts = serving.glass_table(card), limit_table(card), nutrition_table(card)
    what, *figures = glass.heads
    return Card(
        frame,
        Heading("Serving card", card.code, card.name, symbol=card.code),
        (
            CardPart("", above=tuple(serving.head(card))),
            CardPart("In a glass", heads=(what, *figures), rows=glass.rows),
            CardPart(
                "Against limits",
                heads=limits.heads,
                rows=limits.rows,
                below=(*limits.sources, *close_lines(card)) if limits.rows else (),
            ),
            CardPart("What a label declares", above=tuple(declared_lines(card))),
            CardPart("Nutrition", heads=facts.heads, rows=facts.rows),
            CardPart(
                "What to mind", above=(*serving.louche_lines(card), *serving.caution_lines(card))
            ),
            CardPart("What is missing", above=tuple(serving.missing_lines(card))),
        ),
    )


def cost_paper(card: CostCard, frame: Frame) -> Card:
    """Return the cost of a lot as a paper shows it, each figure under its currency."""
    *heads, last = cost.HEADS
    in_currency = f"{last}, {card.currency}" if card.currency else last
    return Card(
        frame,
        Heading("Cost card", card.code, card.name, symbol=card.code),
        (
            CardPart("", above=tuple(cost.head(card))),
            CardPart(
                "What it was made of",
                heads=(*heads, in_currency),
                rows=rows_of(cost.rows(card)),
                right=frozenset({"amount", in_currency}),
                below=tuple(cost.tail(card)),
            ),
        ),
    )
