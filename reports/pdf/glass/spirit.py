"""The spirit account on paper.

Guarantees: every line of the account and every lot of spirit, in the order of the view.
"""

from collections.abc import Iterator
from typing import BinaryIO

from reportlab.lib.units import mm

from reports.kit.frame import Heading
from reports.pdf.kit.head import paper_head, sentences
from reports.pdf.kit.marks import Rule
from reports.pdf.kit.page import INNER, SIDE, write_paper
from reports.pdf.kit.rows import (
    Column,
    Piece,
    again_strip,
    column_strip,
    row_strips,
    table,
    title_strip,
)
from reports.pdf.kit.strips import Section, Strip, stacked
from reports.pdf.kit.styles import CELL, RULE, VALUE
from reports.views.glass import SpiritView

ACCOUNT_COLUMNS = (
    Column("", 6 * mm),
    Column("Litres of pure alcohol at 20 °C", 88 * mm),
    Column("L", 20 * mm, "right"),
)
"""The account."""
LOT_COLUMNS = (
    Column("Spirit lot", 34 * mm),
    Column("What", 68 * mm),
    Column("Received, L", 27 * mm, "right"),
    Column("Used, L", 27 * mm, "right"),
    Column("Left, L", 27 * mm, "right"),
)
"""Its lots."""


def spirit_paper(view: SpiritView, out: BinaryIO) -> None:
    """Write the spirit account of a period as PDF.

    Args:
        view: What it says.
        out: Where the bytes go; untouched if anything is refused.
    """
    heading = Heading("Spirit account", view.period)
    parts = [paper_head(view.frame, heading), *spirit_sections(view, "Account")]
    write_paper(out, view.frame, heading, parts)


def spirit_sections(view: SpiritView, title: str) -> list[Section]:
    """Lay out the account, its lots, and what to know besides."""
    lots = ([(Piece(cell),) for cell in row] for row in view.lots)
    return [
        Section(
            stacked([title_strip(title), column_strip(ACCOUNT_COLUMNS)]),
            stacked([again_strip(title), column_strip(ACCOUNT_COLUMNS)]),
            tuple(strip for row in view.rows for strip in _line(*row)),
        ),
        table("Spirit lots", LOT_COLUMNS, lots),
        *sentences(view.notes),
    ]


def _line(sign: str, what: str, litres: str) -> Iterator[Strip]:
    """Lay out a line; a rule stands above a sum."""
    # What stands further in on a screen is part of the line above it.
    face = CELL if what.startswith(" ") else VALUE
    if sign == "=":
        yield Strip(0, (Rule(SIDE, 0, SIDE + INNER, 0, RULE),))
    yield from row_strips(ACCOUNT_COLUMNS, [(Piece(t, face),) for t in (sign, what, litres)], 0)
