"""Showing a trace.

Guarantees: readable at 80 columns; whole lines in a pipe. Refuses: to choose words.
"""

import shutil
import textwrap

from cli.call import Call
from cli.tables import is_screen, print_json, seen
from ledger.service.looking import find_lot
from ledger.service.tracing import Trace, trace
from reports.build.plain import trace_plain
from reports.build.tree import trace_lines


def show_trace(call: Call, text: str, *, back: bool, forward: bool, depth: int | None) -> None:
    """Show a trace as a tree, or as JSON."""
    book = call.book()
    code = find_lot(book, text, call.writer)
    found = trace(book, code, back=back, forward=forward, deepest=depth)
    if call.json:
        print_json(trace_plain(found))
        return
    print_trace(found, back=back, forward=forward)


def print_trace(found: Trace, *, back: bool, forward: bool) -> None:
    """Print a trace as a tree, folded to a screen's width."""
    for line in map(seen, trace_lines(found, back=back, forward=forward)):
        print(fold(line, shutil.get_terminal_size().columns) if is_screen() else line)


def fold(line: str, width: int) -> str:
    """Return a line of a tree folded to a width, its rules carried on at the left.

    >>> print(fold("├─ 30 mL  OS-001-O  Orange syrup, being made", 30))
    ├─ 30 mL  OS-001-O  Orange
    │    syrup, being made
    """
    if len(line) <= width:
        return line
    rules = len(line) - len(line.lstrip("│├└─ "))
    carried = line[:rules].replace("├─", "│ ").replace("└─", "  ")
    return "\n".join(
        textwrap.wrap(
            line,
            width,
            subsequent_indent=f"{carried}  ",
            break_on_hyphens=False,
        )
    )
