"""Showing a trace.

Guarantees: readable at 80 columns; whole lines in a pipe; the first line is shown before the walk.
"""

import shutil
import sys
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from cli.kit.call import Call
from cli.kit.files import check_place, draw, write
from cli.kit.progress import progress
from cli.kit.tables import is_screen, print_json, print_lines, seen
from ledger.domain.entries.choices import MaterialKind
from ledger.errors import InputError
from ledger.service.desk.book import Book
from ledger.service.desk.clock import house_of, written_at
from ledger.service.evidence.seal import seal
from ledger.service.lots.dossier import brief_of, find_lot
from ledger.service.lots.shares import Traced, no_deeper, only_kind, traced, with_days
from reports.kit.format import plural
from reports.kit.frame import frame_of
from reports.kit.tables import csv_text
from reports.words.lots.next_in_lists import step_of_trace
from reports.words.lots.trace import describe, only_lines, traced_lines
from reports.words.lots.trace_table import trace_sheet, trace_view

OTHER_CSV = "Give another name with --csv, or --force to write over it."


@dataclass(frozen=True, slots=True)
class Asked:
    """What of a trace is asked for."""

    back: bool
    """Whether to go back."""
    forward: bool
    """Whether to go forward."""
    depth: int | None = None
    """How many steps to show."""
    only: str | None = None
    """Kind of material to go back to."""
    csv: Path | None = None
    """CSV file to write."""
    out: Path | None = None
    """PDF file to write."""
    force: bool = False
    """Whether to write over files."""


def show_trace(call: Call, text: str, asked: Asked) -> None:
    """Show a trace as a tree or as JSON, or write it to files."""
    kind = _kind(asked)
    if asked.csv:
        check_place(asked.csv, force=asked.force, instead=OTHER_CSV)
    if asked.out:
        check_place(asked.out, force=asked.force)
    book = call.book()
    code = find_lot(book, text, call.writer)
    is_shown = not (call.json or asked.csv or asked.out)
    if is_shown:
        print_folded([describe(brief_of(book, code))])
        sys.stdout.flush()
    with progress("Tracing", quiet=call.json) as tick:
        found = traced(book, code, back=asked.back, forward=asked.forward, tick=tick)
    step = step_of_trace(found.trace)
    found, notes = _only(found, kind) if kind else (found, [])
    found = no_deeper(found, asked.depth)
    if is_shown:
        is_missing = kind and len(found.trace.nodes) == 1
        if not is_missing:
            print_folded(traced_lines(found, back=asked.back, forward=asked.forward))
        print_lines([*([""] if is_missing else []), *notes, f"Next: {step}"])
        return
    written = [str(place) for place in _files(book, found, asked, notes)]
    if call.json:
        from reports.json.lots.trace import trace_answer

        print_json(trace_answer(with_days(book, found), step, written))
    else:
        count = plural(len(found.trace.nodes) - 1, "other lot")
        where = " and ".join(written)
        print_lines([f"The trace of {code} with {count} is in {where}.", f"Next: {step}"])


def print_trace(found: Traced, *, back: bool, forward: bool) -> None:
    """Print a trace as a tree, the lot traced first."""
    print_folded([describe(found.trace.lot)])
    print_folded(traced_lines(found, back=back, forward=forward))


def print_folded(lines: Iterable[str]) -> None:
    """Print lines of a tree as they come, folded to a screen's width."""
    for line in map(seen, lines):
        print(fold(line, shutil.get_terminal_size().columns) if is_screen() else line)


def _kind(asked: Asked) -> MaterialKind | None:
    if asked.only is None:
        return None
    if asked.forward:
        raise InputError(
            "Materials stand behind a lot, so --only does not go with --forward.",
            "Leave one of the two out.",
        )
    try:
        return MaterialKind(asked.only.strip().lower())
    except ValueError:
        raise InputError(
            f'"{asked.only}" is no kind of material.', f"Give one of: {', '.join(MaterialKind)}."
        ) from None


def _only(whole: Traced, kind: MaterialKind) -> tuple[Traced, list[str]]:
    """Return the part of a trace that leads to a kind of material, and what it leaves out."""
    shown = only_kind(whole, kind)
    return shown, only_lines(whole.trace, shown.trace, kind)


def _files(book: Book, found: Traced, asked: Asked, notes: list[str]) -> list[Path]:
    written = []
    if asked.csv:
        content = csv_text(trace_sheet(found)).encode()
        write(asked.csv, content, force=asked.force, instead=OTHER_CSV)
        written.append(asked.csv)
    if asked.out:
        from reports.pdf.lots.trace import trace_paper

        view = trace_view(
            found,
            frame_of(house_of(book), seal(book), written_at(book)),
            back=asked.back,
            forward=asked.forward,
            notes=notes,
        )
        draw(asked.out, lambda paper: trace_paper(view, paper), force=asked.force)
        written.append(asked.out)
    return written


def fold(line: str, width: int) -> str:
    """Return a line of a tree folded to a width, its rules carried on at the left.

    >>> print(fold("├─ 30 mL  OS-002-M  Orange syrup, being made", 30))
    ├─ 30 mL  OS-002-M  Orange
    │    syrup, being made
    """
    from cli.kit.wrapping import wrapped

    rules = len(line) - len(line.lstrip("│├└─ "))
    carried = line[:rules].replace("├─", "│ ").replace("└─", "  ")
    return "\n".join(wrapped(line, width, f"{carried}  "))
