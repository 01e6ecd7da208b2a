"""The spirit account on paper.

Guarantees: every line of the account and every lot of spirit, in the order of the view.
"""

from typing import BinaryIO

from reportlab.lib.units import mm

from reports.kit.frame import Heading
from reports.pdf.kit.head import NOTHING, paper_head, sentences
from reports.pdf.kit.page import write_paper
from reports.pdf.kit.rows import Column, Piece, column_strip, row_strips, table, title_strip
from reports.pdf.kit.strips import Section, stacked
from reports.pdf.kit.styles import CELL, GUTTER, VALUE
from reports.views.glass import SpiritView

ACCOUNT_COLUMNS = (
    Column("Litres of pure alcohol at 20 °C", 140 * mm),
    Column("L", 40 * mm + GUTTER, "right"),
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
    write_paper(out, view.frame, heading, [paper_head(view.frame, heading), *spirit_sections(view)])


def spirit_sections(view: SpiritView) -> list[Section]:
    """Lay out the account, its lots, and what to know besides."""
    strips = [
        strip
        for what, litres in view.rows
        for strip in row_strips(
            ACCOUNT_COLUMNS,
            # What stands further in on a screen is part of the line above it.
            [(Piece(what, CELL if what.startswith(" ") else VALUE),), (Piece(litres),)],
            0,
        )
    ]
    head = stacked([title_strip(f"Spirit account, {view.period}"), column_strip(ACCOUNT_COLUMNS)])
    lots = ([(Piece(cell),) for cell in row] for row in view.lots)
    return [
        Section(head, NOTHING, tuple(strips)),
        table("Spirit lots", LOT_COLUMNS, lots),
        *sentences(view.notes),
    ]
