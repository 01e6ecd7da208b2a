"""The tables of a record.

Guarantees: every row of the view is in one of them, struck rows too; a table without rows says so.
"""

from collections.abc import Iterable, Sequence

from reportlab.lib.units import mm

from reports.pdf.kit.head import NOTHING
from reports.pdf.kit.marks import Box, Mark, Rule, shifted
from reports.pdf.kit.page import INNER, SIDE
from reports.pdf.kit.rows import (
    Cell,
    Column,
    Piece,
    again_strip,
    column_strip,
    row_strips,
    table,
    title_strip,
)
from reports.pdf.kit.strips import Section, Strip, stacked
from reports.pdf.kit.styles import CELL, GUTTER, LEADING, NOTE, PAD, RULE, VALUE
from reports.views.lots import GateRow, InputRow, LadderRow, LookRow, NeighbourRow, StepRow

INPUT_COLUMNS = (
    Column("Entry", 11 * mm, "right"),
    Column("Lot", 25 * mm),
    Column("What", 49 * mm),
    Column("Target", 19 * mm, "right"),
    Column("Limits", 30 * mm, "right"),
    Column("Put in", 18 * mm, "right"),
    Column("Off", 18 * mm, "right"),
    Column("By, checked", 13 * mm),
)
"""The table of inputs."""

STEP_COLUMNS = (
    Column("Entry", 11 * mm, "right"),
    Column("When", 30 * mm),
    Column("What", 23 * mm),
    Column("As recorded", 66 * mm),
    Column("Asked", 35 * mm),
    Column("By", 18 * mm),
)
"""Every table of entries."""

LOOK_COLUMNS = (
    Column("Entry", 11 * mm, "right"),
    Column("When", 30 * mm),
    Column("Age", 20 * mm),
    Column("Looked at", 27 * mm),
    Column("Grade", 22 * mm),
    Column("NTU", 14 * mm, "right"),
    Column("What was seen", 49 * mm),
    Column("By", 10 * mm),
)
"""The table of looks."""

LADDER_COLUMNS = (
    Column("", 6 * mm),
    Column("What", 110 * mm),
    Column("Amount", 32 * mm, "right"),
    Column("Of what went in", 35 * mm, "right"),
)
"""The ladder of yield."""

NEIGHBOUR_COLUMNS = (
    Column("Lot or who", 44 * mm),
    Column("What", 54 * mm),
    Column("Day", 20 * mm),
    Column("Amount", 21 * mm, "right"),
    Column("Address", 44 * mm),
)
"""One step back, one forward."""

PEOPLE_COLUMNS = (
    Column("Initials", 20 * mm),
    Column("Name", 80 * mm),
    Column("Role", 83 * mm),
)
"""Who wrote in it."""

PAIR_COLUMNS = (Column("", 36 * mm), Column("", 147 * mm))
"""Label and words."""

TICK, TICK_ROOM = 3 * mm, 7 * mm
"""Side of a box that is ticked, and the width kept for it."""


def inputs(rows: Iterable[InputRow]) -> Section:
    """Lay out what went in beside what was asked for."""
    return table("What went in", INPUT_COLUMNS, (_input_cells(row) for row in rows))


def _input_cells(row: InputRow) -> list[Cell]:
    """Set one input, struck through as a whole if its entry is."""
    by = ", ".join(part for part in (row.by, row.checked) if part)
    texts = (row.entry, row.lot, row.what, row.target, row.limits, row.amount, row.off, by)
    return [
        (Piece(text, VALUE if place in (1, 5) else CELL, row.struck),)
        for place, text in enumerate(texts)
    ]


def steps(title: str, rows: Iterable[StepRow]) -> Section:
    """Lay out entries in order."""
    return table(title, STEP_COLUMNS, (_step_cells(row) for row in rows))


def _step_cells(row: StepRow) -> list[Cell]:
    """Set one entry; its notes are never struck, and what went wrong stands out."""
    entry, when, words, by = (
        Piece(text, CELL, row.struck) for text in (row.entry, row.when, row.words, row.by)
    )
    notes = (Piece(note, NOTE) for note in row.notes)
    departures = (Piece(words, VALUE) for words in row.departures)
    what = Piece(row.what, VALUE)
    return [(entry,), (when,), (what,), (words, *departures, *notes), (Piece(row.asked),), (by,)]


def looks(rows: Iterable[LookRow]) -> Section:
    """Lay out the looks."""
    return table("Looks", LOOK_COLUMNS, (_look_cells(row) for row in rows))


def _look_cells(row: LookRow) -> list[Cell]:
    texts = (row.entry, row.when, row.age, row.seen, row.grade, row.ntu, row.words, row.by)
    return [
        (Piece(text, VALUE if place == GRADE else CELL, row.struck),)
        for place, text in enumerate(texts)
    ]


GRADE = 4
"""The column of the grade."""


def ladder(title: str, rows: Sequence[LadderRow]) -> Section:
    """Lay out what went in, less what is told, down to what came out; all on one page."""
    strips: list[Strip] = []
    for row in rows:
        face = VALUE if row.is_sum else CELL
        cells = [(Piece(text, face),) for text in (row.sign, row.what, row.amount, row.share)]
        above = [Strip(0, (Rule(SIDE, 0, SIDE + INNER, 0, RULE),))] if row.sign == "=" else []
        strips += [*above, *row_strips(LADDER_COLUMNS, cells, 0)]
    return Section(
        stacked([title_strip(title), column_strip(LADDER_COLUMNS)]),
        NOTHING,
        tuple(strips),
        whole=True,
    )


def neighbours(title: str, rows: Iterable[NeighbourRow]) -> Section:
    """Lay out one step back or forward."""
    cells = (
        [(Piece(text),) for text in (row.who, row.what, row.on, row.amount, row.where)]
        for row in rows
    )
    return table(title, NEIGHBOUR_COLUMNS, cells)


def people(rows: Iterable[tuple[str, str, str]]) -> Section:
    """Lay out who wrote in it."""
    return table("People", PEOPLE_COLUMNS, ([(Piece(text),) for text in row] for row in rows))


def pairs(title: str, rows: Iterable[tuple[str, str]]) -> Section:
    """Lay out labels and words, without column heads."""
    strips = [
        strip
        for label, words in rows
        for strip in row_strips(PAIR_COLUMNS, [(Piece(label),), (Piece(words, VALUE),)], 0)
    ]
    return Section(title_strip(title), again_strip(title), tuple(strips))


def gate(rows: Sequence[GateRow]) -> Section:
    """Lay out what a release asks, each with a box that is ticked where it is so."""
    columns = (Column("", 62 * mm), Column("", INNER + GUTTER - 62 * mm - TICK_ROOM))
    strips: list[Strip] = []
    for row in rows:
        cells: list[Cell] = [(Piece(row.asked, VALUE),), (Piece(row.words),)]
        for strip in row_strips(columns, cells, 0):
            moved = Strip(strip.height, (*shifted(strip.marks, TICK_ROOM), *_tick(row.is_met)))
            strips.append(moved)
    return Section(title_strip(GATE), again_strip(GATE), tuple(strips))


GATE = "The gate of release"
"""The head of what a release asks."""


def _tick(is_met: bool | None) -> list[Mark]:
    """Draw a box, ticked where it is so, empty where it is not, and a dash where nothing says."""
    left, top = SIDE, PAD + (LEADING - TICK) / 2
    box: list[Mark] = [Box(left, top, TICK, TICK, None, RULE)]
    middle, right, below = left + TICK / 3, left + TICK, top + TICK
    if is_met:
        box.append(Rule(left + 0.5, top + TICK / 2, middle, below - 0.5, 1.2))
        box.append(Rule(middle, below - 0.5, right, top, 1.2))
    elif is_met is None:
        box.append(Rule(left + 1, top + TICK / 2, right - 1, top + TICK / 2, RULE))
    return box
