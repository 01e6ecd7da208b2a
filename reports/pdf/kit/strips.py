"""Strips: what a page is stacked from, laid out before anything is drawn.

Guarantees: a strip knows its height and its marks before the page count is fixed, so that
"page x of y" is true. Refuses: a strip higher than a page.
"""

from collections.abc import Iterable, Sequence

from msgspec import Struct
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ledger.errors import RefusedError
from reports.pdf.kit.marks import Mark, lowered


class Strip(Struct, frozen=True):
    """A band across the page."""

    height: float
    marks: tuple[Mark, ...] = ()


class Section(Struct, frozen=True):
    """Strips that belong together.

    Attributes:
        head: Stands above the first row and never alone at the foot of a page.
        again: Stands above the rows on each further page.
        rows: The strips in order.
        whole: Kept on one page if a page can hold it.
    """

    head: Strip
    again: Strip
    rows: tuple[Strip, ...] = ()
    whole: bool = False

    @property
    def least(self) -> float:
        """The height it must find to begin on a page."""
        rows = self.rows if self.whole else self.rows[:1]
        return self.head.height + sum(row.height for row in rows)


def stacked(strips: Sequence[Strip]) -> Strip:
    """Make one strip of several, so that they stay together."""
    height, marks = 0.0, list[Mark]()
    for strip in strips:
        marks += lowered(strip.marks, height)
        height += strip.height
    return Strip(height, tuple(marks))


def draw_strips(canvas: Canvas, strips: Iterable[Strip], top: float) -> None:
    """Draw strips one below the other, the first with its top at `top`."""
    for strip in strips:
        for mark in strip.marks:
            mark.draw(canvas, top)
        top -= strip.height


def _place(pages: list[list[Strip]], section: Section, left: float, height: float) -> float:
    """Put one section on the last page and on new ones; return the height then left."""
    if left < min(section.least, height):
        pages.append([])
        left = height
    pages[-1].append(section.head)
    left -= section.head.height
    for row in section.rows:
        # What does not fit on a page with nothing but the head fits on none; paginate refuses it.
        if row.height > left and left < height - section.again.height:
            pages.append([section.again])
            left = height - section.again.height
        pages[-1].append(row)
        left -= row.height
    return left


def paginate(sections: Sequence[Section], height: float) -> list[list[Strip]]:
    """Share sections out over pages of a height.

    Args:
        sections: In order.
        height: Room on each page in points.

    Returns:
        The strips of each page; no strip overlaps the end of its page.

    Raises:
        RefusedError: A strip alone is higher than a page.
    """
    pages: list[list[Strip]] = [[]]
    left = height
    for section in sections:
        left = _place(pages, section, left, height)
    highest = max(sum(strip.height for strip in page) for page in pages)
    # Sums of points are off by the rounding of floats.
    if highest > height + 1e-6:
        raise RefusedError(
            f"A part of the paper that must stay in one piece needs {highest / mm:.0f} mm of "
            f"height and a page has {height / mm:.0f} mm.",
            "Shorten its names and texts and print again.",
        )
    return pages
