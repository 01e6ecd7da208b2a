"""Tables and text on a screen or in a pipe.

Guarantees: in a pipe every cell is whole and nothing is coloured; on a screen a table keeps to its
width. Refuses: markup; text is shown as it was written.
"""

import json
import sys
from collections.abc import Sequence
from typing import Any

from rich.console import Console
from rich.table import Table
from rich.text import Text


def is_screen() -> bool:
    """Return whether standard output is a terminal."""
    return sys.stdout.isatty()


def print_json(value: Any) -> None:  # noqa: ANN401 - any JSON value
    """Print a value as JSON."""
    print(json.dumps(value, ensure_ascii=False, indent=2))


def print_lines(lines: Sequence[str]) -> None:
    """Print lines as they are; a screen wraps them at words."""
    console = Console(highlight=False, soft_wrap=not is_screen())
    for line in lines:
        console.print(Text(line))


def print_table(heads: Sequence[str], rows: Sequence[Sequence[str]], right: str = "") -> None:
    """Print a table.

    Args:
        heads: Column heads.
        rows: Cells.
        right: Heads of the columns set to the right, with spaces between.
    """
    to_right = set(right.split())
    if is_screen():
        table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0), header_style="bold")
        for head in heads:
            table.add_column(
                Text(head),
                justify="right" if head in to_right else "left",
                no_wrap=head in ("lot", "entry") or head in to_right,
                overflow="fold",
            )
        for row in rows:
            table.add_row(*(Text(cell) for cell in row))
        Console(highlight=False).print(table)
        return
    widths = [max(len(cell) for cell in column) for column in zip(heads, *rows, strict=True)]
    for row in (heads, *rows):
        cells = [
            cell.rjust(width) if head in to_right else cell.ljust(width)
            for cell, width, head in zip(row, widths, heads, strict=True)
        ]
        print("  ".join(cells).rstrip())
