"""Strips: what a page is stacked from, laid out before anything is drawn.

Guarantees: a strip knows its height and its marks before the page count is fixed, so that
"page x of y" is true. Refuses: a strip higher than a page.
"""

from collections.abc import Iterable, Sequence

from msgspec import Struct
from msgspec.structs import replace
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ledger.errors import RefusedError
from reports.pdf.kit.marks import Mark, lowered


class Strip(Struct, frozen=True):
    """A band across the page."""

    height: float
    marks: tuple[Mark, ...] = ()
    title: str = ""
    """What a reader of the file may jump to; nothing for most."""


class Section(Struct, frozen=True):
    """Strips that belong together.

    Attributes:
        head: Stands above the first rows and never with fewer than two at the foot of a page.
        again: Stands above the rows on each further page.
        rows: The strips in order.
        whole: Kept on one page if a page can hold it.
        tied: Never begins a page: the last two rows before it come along.
        within: For each row what stands above it where it begins a further page, such as what it
            is part of; nothing where none is given.
    """

    head: Strip
    again: Strip
    rows: tuple[Strip, ...] = ()
    whole: bool = False
    tied: bool = False
    within: tuple[Strip, ...] = ()

    def least(self, height: float) -> float:
        """The height it must find to begin on a page of a height."""
        rows = self.rows if self.whole else self.rows[:KEPT]
        together = self.head.height + sum(row.height for row in rows)
        if together <= height:
            return together
        return self.head.height + sum(row.height for row in self.rows[:1])


NONE = Strip(0)
"""No strip."""

KEPT = 2
"""Rows that stay with a head, and that never stand alone at the end."""


def stacked(strips: Sequence[Strip]) -> Strip:
    """Make one strip of several, so that they stay together."""
    height, marks = 0.0, list[Mark]()
    for strip in strips:
        marks += lowered(strip.marks, height)
        height += strip.height
    title = next((strip.title for strip in strips if strip.title), "")
    return Strip(height, tuple(marks), title)


def draw_strips(canvas: Canvas, strips: Iterable[Strip], top: float) -> None:
    """Draw strips one below the other, the first with its top at `top`."""
    for strip in strips:
        if strip.title:
            _mark_title(canvas, strip.title, top)
        for mark in strip.marks:
            mark.draw(canvas, top)
        top -= strip.height


def _mark_title(canvas: Canvas, title: str, top: float) -> None:
    """List a title among those that a reader of the file may jump to."""
    key = f"{canvas.getPageNumber()}-{top:.1f}"
    canvas.bookmarkHorizontal(key, 0, top)
    canvas.addOutlineEntry(title, key, level=0)


def _place(pages: list[list[Strip]], section: Section, left: float, height: float) -> float:
    """Put one section on the last page and on new ones; return the height then left."""
    if left < min(section.least(height), height):
        pages.append([])
        left = height
    pages[-1].append(section.head)
    left -= section.head.height
    rows = section.rows
    for number, row in enumerate(rows):
        needed = row.height
        # The last row takes the one before it along, rather than stand alone on a page.
        if number == len(rows) - KEPT and number >= KEPT:
            needed = sum(each.height for each in rows[number:])
        # What does not fit on a page with nothing but the head fits on none; paginate refuses it.
        above = section.within[number] if section.within else NONE
        if needed > left and left < height - section.again.height - above.height:
            pages.append([section.again, above] if above.height else [section.again])
            left = height - section.again.height - above.height
        pages[-1].append(row)
        left -= row.height
    return left


def _tie(sections: Sequence[Section], height: float) -> list[Section]:
    """Make one row of what never begins a page and the last rows before it."""
    tied: list[Section] = []
    for section in sections:
        tied = (_joined(tied, section, height) if section.tied else None) or [*tied, section]
    return tied


def _joined(before: Sequence[Section], section: Section, height: float) -> list[Section] | None:
    """Join what is tied to the rows before it; None where there are too few, or too high ones.

    A section with fewer rows than come along comes along whole, with its head.
    """
    wanted, parts = KEPT, [section.head, *section.rows]
    for number, each in reversed(list(enumerate(before))):
        taken = each.rows[-wanted:]
        last = stacked([*taken, *parts])
        if last.height + each.again.height > height:
            return None
        if len(taken) == wanted:
            kept = replace(each, rows=(*each.rows[:-wanted], last))
            return [*before[:number], kept]
        wanted -= len(taken)
        parts = [each.head, *taken, *parts]
    return None


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
    for section in _tie(sections, height):
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
