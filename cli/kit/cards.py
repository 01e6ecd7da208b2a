"""A table as cards, for a screen that is too narrow for it: a row below the other, cell by cell.

Guarantees: no cell is cut, and each stands behind the head of its column; empty cells are left out.
"""

from collections.abc import Iterator, Sequence

from rich.cells import cell_len

from cli.kit.wrapping import wrapped

CARDS_BELOW = 60
"""Columns below which a table that does not fit becomes cards."""
INSET = 2


def cards(heads: Sequence[str], rows: Sequence[Sequence[str]], width: int) -> Iterator[str]:
    """Yield the lines of rows as cards; the first cell of a row is the title of its card.

    >>> list(cards(["lot", "on hand", "look"], [["OE-001-5", "30 mL", ""]], 40))
    ['OE-001-5', '  on hand  30 mL']
    """
    room = max((cell_len(head) for head in heads[1:]), default=0)
    for row in rows:
        yield from wrapped(row[0], width)
        for head, cell in zip(heads[1:], row[1:], strict=True):
            first = f"{' ' * INSET}{head.ljust(room)}  "
            lines = list(wrapped(cell, max(width - len(first), 8), "")) if cell else []
            for number, line in enumerate(lines):
                yield f"{first if number == 0 else ' ' * len(first)}{line}"
