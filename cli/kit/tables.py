"""Tables and text on a screen or in a pipe.

Guarantees: in a pipe every cell is whole and nothing is coloured; on a screen nothing is wider than
the screen, no code is cut and no number is parted from its unit while there is room. Refuses:
markup; text is shown as it was written. What only a screen needs is loaded only for a screen.
"""

import os
import sys
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, TextIO

if TYPE_CHECKING:
    from msgspec import Struct
    from rich.table import Table

GAP = 2
"""Blank columns between two columns of a table."""
LEAST_WORDS = 16
"""Least width at which a column of words still reads."""


def is_screen() -> bool:
    """Return whether standard output is a terminal."""
    return sys.stdout.isatty()


def seen(text: str) -> str:
    r"""Return a text without what a terminal would take for a command.

    >>> seen("café \x1b[31m")
    'café ·[31m'
    """
    return "".join(letter if letter.isprintable() else "·" for letter in text)


def print_json(answer: "Struct | Sequence[Struct]", out: TextIO | None = None) -> None:
    """Print an answer, or a list of them, as JSON; None: to standard output."""
    from msgspec.json import encode, format

    print(format(encode(answer), indent=2).decode(), file=out)


def print_lines(lines: Sequence[str]) -> None:
    """Print lines as they are; on a screen they are wrapped at words."""
    print("".join(f"{line}\n" for line in fitted(lines, sys.stdout)), end="")


def fitted(lines: Iterable[str], out: TextIO) -> Iterator[str]:
    """Yield lines as a stream shows them: whole in a pipe, wrapped at words on a screen."""
    if not out.isatty():
        yield from map(seen, lines)
        return
    from rich.console import Console

    from cli.kit.wrapping import wrapped

    width = Console(file=out).width
    for line in lines:
        yield from wrapped(seen(line), width)


def print_table(heads: Sequence[str], rows: Sequence[Sequence[str]], right: str = "") -> None:
    """Print a table.

    Args:
        heads: Column heads.
        rows: Cells.
        right: Heads of the columns set to the right, with commas between.
    """
    shown = [[seen(cell) for cell in row] for row in rows]
    if is_screen():
        _on_screen(list(zip(heads, *shown, strict=True)), right.split(","))
        return
    for line in table_lines(heads, shown, right):
        print(line)


def table_lines(heads: Sequence[str], rows: Sequence[Sequence[str]], right: str = "") -> list[str]:
    """Return the lines of a table with every cell whole; see `print_table`."""
    columns = list(zip(heads, *rows, strict=True))
    widths = [max(len(cell) for cell in column) for column in columns]
    return [
        (" " * GAP)
        .join(
            cell.rjust(width) if head in right.split(",") else cell.ljust(width)
            for cell, width, head in zip(row, widths, heads, strict=True)
        )
        .rstrip()
        for row in (heads, *rows)
    ]


def _on_screen(columns: Sequence[Sequence[str]], right: Sequence[str]) -> None:
    from rich.console import Console

    console = Console(highlight=False)
    if is_too_wide(columns, console.width):
        from cli.kit.cards import cards

        heads, *rows = zip(*columns, strict=True)
        print("".join(f"{line}\n" for line in cards(heads, rows, console.width)), end="")
    else:
        console.print(screen_table(columns, console.width, right))


def is_too_wide(columns: Sequence[Sequence[str]], width: int) -> bool:
    """Return whether a table is one for cards: the screen is narrow, and it does not fit."""
    from rich.cells import cell_len

    from cli.kit.cards import CARDS_BELOW

    widths = [max(cell_len(cell) for cell in column) for column in columns]
    return width < CARDS_BELOW and sum(widths) + GAP * (len(columns) - 1) > width


def screen_table(
    columns: Sequence[Sequence[str]], width: int, right: Sequence[str] = ()
) -> "Table":
    """Return a table for a screen so many columns wide.

    Args:
        columns: Its columns, each with its head first.
        width: Columns of the screen.
        right: Heads of the columns set to the right.
    """
    from rich.table import Table
    from rich.text import Text

    from cli.kit.wrapping import wrapped

    style = "" if os.environ.get("NO_COLOR") else "bold"
    table = Table(box=None, pad_edge=False, padding=(0, GAP, 0, 0), header_style=style)
    widths = column_widths(columns, width)
    for (head, *_), room in zip(columns, widths, strict=True):
        table.add_column(
            Text(head),
            justify="right" if head in right else "left",
            width=room,
            overflow="fold",
        )
    for row in list(zip(*columns, strict=True))[1:]:
        lines = (wrapped(cell, room) for cell, room in zip(row, widths, strict=True))
        table.add_row(*(Text("\n".join(cell)) for cell in lines))
    return table


def column_widths(columns: Sequence[Sequence[str]], room: int) -> list[int]:
    """Return how wide each column is, so that together they fit a screen.

    The widest column gives way first, down to a width at which words still read; then the widest
    of those left, down to its longest word, a number and its unit being one; a screen too narrow
    for that parts these, and then cuts words.

    >>> column_widths([["lot", "OE-001-5"], ["what", "Orange essence, first run of May"]], 40)
    [8, 30]
    """
    from rich.cells import cell_len

    from cli.kit.wrapping import pieces

    widths = [max(cell_len(cell) for cell in column) for column in columns]
    kept = [_longest(column, pieces) for column in columns]
    words = [_longest(column, str.split) for column in columns]
    room -= GAP * (len(columns) - 1)
    for least in ([max(LEAST_WORDS, word) for word in kept], kept, words, [1] * len(columns)):
        while sum(widths) > room:
            over = [(width, place) for place, width in enumerate(widths) if width > least[place]]
            if not over:
                break
            width, place = max(over)
            widths[place] = max(least[place], width - (sum(widths) - room))
    return widths


def _longest(column: Sequence[str], parted: Callable[[str], Iterable[str]]) -> int:
    from rich.cells import cell_len

    return max((cell_len(word.strip()) for cell in column for word in parted(cell)), default=1)
