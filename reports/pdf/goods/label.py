"""Sheets of bottle labels.

Guarantees: as many equal labels as asked for, on as many A4 pages as that takes, with marks to
cut along and the book's seal below; every label carries its lot code in words and as a QR symbol.
Refuses: fewer than one label, and a label whose words do not fit
when it declares the least.
"""

from typing import BinaryIO

from reportlab.lib.pagesizes import A4
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ledger.errors import RefusedError
from reports.pdf.goods.label_fit import LABEL_HEIGHT, LABEL_WIDTH, fit_label
from reports.pdf.kit.marks import Mark
from reports.pdf.kit.page import BELOW, FOOT_ROOM, WIDTH, foot, write_pages
from reports.pdf.kit.strips import draw_strips
from reports.views.goods import LabelSheetView

ACROSS, DOWN = 2, 6
"""How many labels stand side by side and one below the other."""

PER_PAGE = ACROSS * DOWN
"""Labels a page."""

LEFT = (WIDTH - ACROSS * LABEL_WIDTH) / 2
"""The leftmost cut."""

TOP = A4[1] - 7 * mm
"""The uppermost cut."""

TICK = 1.5 * mm
"""Half the length of a cutting mark; it stays inside the padding of the labels."""


def _lay_marks(canvas: Canvas) -> None:
    """Draw a small cross wherever two cuts meet."""
    canvas.setLineWidth(0.25)
    for row in range(DOWN + 1):
        for column in range(ACROSS + 1):
            x, y = LEFT + column * LABEL_WIDTH, TOP - row * LABEL_HEIGHT
            canvas.line(x - TICK, y, x + TICK, y)
            canvas.line(x, y - TICK, x, y + TICK)


def _draw_page(canvas: Canvas, marks: tuple[Mark, ...], page: int, count: int) -> None:
    """Draw the labels of one page; they are drawn once for the paper and then repeated."""
    if page == 0:
        canvas.beginForm("label", 0, 0, LABEL_WIDTH, LABEL_HEIGHT)
        for mark in marks:
            mark.draw(canvas, LABEL_HEIGHT)
        canvas.endForm()
    _lay_marks(canvas)
    for place in range(min(PER_PAGE, count - page * PER_PAGE)):
        row, column = divmod(place, ACROSS)
        canvas.saveState()
        canvas.translate(LEFT + column * LABEL_WIDTH, TOP - (row + 1) * LABEL_HEIGHT)
        canvas.doForm("label")
        canvas.restoreState()


def label_sheet(view: LabelSheetView, out: BinaryIO) -> None:
    """Write a sheet of labels as PDF.

    Args:
        view: What the labels say and how many there are.
        out: Where the bytes go; untouched if anything is refused.

    Raises:
        RefusedError: There is no label to print, or its words do not fit.
    """
    if view.count < 1:
        raise RefusedError(
            f"A sheet needs at least 1 label and {view.count} were asked for.",
            "Say how many labels to print.",
        )
    label, count = view.label, view.count
    marks = fit_label(label).marks
    pages = -(-count // PER_PAGE)
    lead = f"{count} label{'s' if count > 1 else ''} of lot {label.lot}"

    def draw(canvas: Canvas, page: int) -> None:
        _draw_page(canvas, marks, page, count)
        parts = (f"{lead}, page {page + 1} of {pages}", view.frame.stood)
        below = foot(". ".join(part for part in parts if part), view.frame.seal)
        draw_strips(canvas, [below], BELOW + FOOT_ROOM)

    write_pages(out, view.frame, f"Labels {label.lot}", pages, draw)
