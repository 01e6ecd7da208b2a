"""What a card on paper shows: tables with words above and below, as plain frozen data.

Guarantees: every text is ready to print, every list in the order it is shown.
"""

from collections.abc import Sequence

from msgspec import Struct

from reports.kit.frame import Frame, Heading


class CardPart(Struct, frozen=True):
    """One part of a card: a table with its words."""

    title: str
    """Its head; nothing where it has none."""
    above: tuple[str, ...] = ()
    """Sentences above the table."""
    heads: tuple[str, ...] = ()
    """Heads of its columns."""
    rows: tuple[tuple[str, ...], ...] = ()
    """Its cells."""
    right: frozenset[str] = frozenset()
    """Heads of the columns that are set to the right."""
    below: tuple[str, ...] = ()
    """Sentences below the table."""


class Card(Struct, frozen=True):
    """A card on paper."""

    frame: Frame
    """Its house, seal and date."""
    heading: Heading
    """What it is."""
    parts: tuple[CardPart, ...]
    """Its parts in order."""


def rows_of(rows: Sequence[Sequence[str]]) -> tuple[tuple[str, ...], ...]:
    """Return cells as a card has them."""
    return tuple(tuple(row) for row in rows)
