"""The tables of a batch record.

Guarantees: every row of the view is in one of them, struck rows too; a table without rows says so.
"""

from collections.abc import Iterable, Sequence

from reportlab.lib.units import mm

from reports.pdf.kit.rows import Cell, Column, Piece, table
from reports.pdf.kit.strips import Section
from reports.pdf.kit.styles import (
    CELL,
    NOTE,
    VALUE,
)
from reports.views.lots import InputRow, StepRow

INPUT_COLUMNS = (
    Column("Entry", 15 * mm, "right"),
    Column("When", 31 * mm),
    Column("Lot", 28 * mm),
    Column("What", 65 * mm),
    Column("Amount", 29 * mm, "right"),
    Column("By", 15 * mm),
)
"""The table of inputs."""

STEP_COLUMNS = (
    Column("Entry", 15 * mm, "right"),
    Column("When", 31 * mm),
    Column("What", 28 * mm),
    Column("As recorded", 94 * mm),
    Column("By", 15 * mm),
)
"""Every table of entries."""

WENT_COLUMNS = (
    Column("Lot or party", 55 * mm),
    Column("What", 94 * mm),
    Column("Amount", 34 * mm, "right"),
)
"""The table of where it went."""

BALANCE_COLUMNS = (
    Column("What", 55 * mm),
    Column("Amount", 50 * mm, "right"),
    Column("", 78 * mm),
)
"""Yield and loss; blank at the right, so that label and value stay near each other."""

AROUND_COLUMNS = (Column("Who or what", 30 * mm), Column("", 153 * mm))
"""People, vessels and instruments."""


def inputs(rows: Iterable[InputRow]) -> Section:
    """Lay out what went in."""
    return table("Inputs", INPUT_COLUMNS, (_input_cells(row) for row in rows))


def _input_cells(row: InputRow) -> list[Cell]:
    """Set one input, struck through as a whole if its entry is."""
    texts = (row.entry, row.when, row.lot, row.what, row.amount, row.by)
    return [(Piece(text, CELL, row.struck),) for text in texts]


def steps(title: str, rows: Iterable[StepRow]) -> Section:
    """Lay out entries in order."""
    return table(title, STEP_COLUMNS, (_step_cells(row) for row in rows))


def _step_cells(row: StepRow) -> list[Cell]:
    """Set one entry; its notes are never struck."""
    entry, when, what, words, by = (
        Piece(text, CELL, row.struck) for text in (row.entry, row.when, row.what, row.words, row.by)
    )
    notes = (Piece(note, NOTE) for note in row.notes)
    return [(entry,), (when,), (what,), (words, *notes), (by,)]


def balance(rows: Sequence[tuple[str, str]]) -> Section:
    """Lay out yield and loss."""
    cells = [[(Piece(label),), (Piece(value, VALUE),), ()] for label, value in rows]
    return table("Yield and loss", BALANCE_COLUMNS, cells)


def went_to(rows: Sequence[tuple[str, str, str]]) -> Section:
    """Lay out where it went."""
    return table("Where it went", WENT_COLUMNS, ([(Piece(text),) for text in row] for row in rows))


def around(rows: Sequence[tuple[str, str]]) -> Section:
    """Lay out who worked on it, in what and with what."""
    cells = [[(Piece(label),), (Piece(value),)] for label, value in rows]
    return table("People, vessels, instruments", AROUND_COLUMNS, cells)
