"""The sheet every paper is printed on: A4, black on white, the seal at its foot.

Guarantees: the same view gives the same bytes; each page says which of how many it is; nothing is
written to the stream until every page is drawn. Refuses: a seal too long for the foot.
"""

from collections.abc import Callable, Sequence
from io import BytesIO
from typing import BinaryIO

from reportlab.lib.pagesizes import A4
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ledger.errors import RefusedError
from reports.pdf.kit.fonts import MEDIUM, REGULAR
from reports.pdf.kit.marks import Mark, Rule, Symbol, Words
from reports.pdf.kit.strips import Strip, draw_strips
from reports.pdf.kit.text import Face, wrap

WIDTH, HEIGHT = A4
"""The sheet in points."""

SIDE = 15 * mm
"""Margin left and right."""

INNER = WIDTH - 2 * SIDE
"""Width between the margins."""

BELOW = 7 * mm
"""What stays blank below the foot: most printers reach that far."""

FOOT_ROOM = 15 * mm
"""Height kept for the foot."""

FOOT = Face(REGULAR, 7)
"""The face of the seal."""

FOOT_LEAD = Face(MEDIUM, 7)
"""The face of the line above the seal."""

PAGE_ROOM = 30 * mm
"""Width kept for "page x of y"."""

SEAL_SQUARE = 13.5 * mm
"""Side of the square for the QR symbol that says the seal."""

FOOT_INNER = INNER - SEAL_SQUARE - 1 * mm
"""Width of the foot's words."""

Draw = Callable[[Canvas, int], None]
"""Draws the body of a page by its number, counted from 0."""


def _foot_lines(lead: str, seal: Sequence[str]) -> list[tuple[str, Face]]:
    """Break the lines of the foot."""
    lines = [(line, FOOT_LEAD) for line in wrap(lead, FOOT_LEAD, lambda _: FOOT_INNER - PAGE_ROOM)]
    return lines + [
        (line, FOOT) for words in seal for line in wrap(words, FOOT, lambda _: FOOT_INNER)
    ]


def foot(lead: str, seal: Sequence[str], page: int, pages: int) -> Strip:
    """Lay out the foot of a page; a QR symbol says the lines of the seal, one below the other.

    Args:
        lead: What paper it is, in words.
        seal: The lines of the book's seal.
        page: Which page, counted from 1.
        pages: How many there are.

    Raises:
        RefusedError: It is too high for the foot of a page.
    """
    y = 1.5 * mm
    edge = SIDE + FOOT_INNER
    number = Words(edge, y + FOOT.drop, f"Page {page} of {pages}", FOOT_LEAD, "right")
    symbol = Symbol(WIDTH - SIDE - SEAL_SQUARE, FOOT_ROOM, "\n".join(seal), SEAL_SQUARE)
    marks: list[Mark] = [Rule(SIDE, 0, WIDTH - SIDE, 0, 0.5), number, symbol]
    for text, face in _foot_lines(lead, seal):
        marks.append(Words(SIDE, y + face.drop, text, face))
        y += face.leading
    if y > FOOT_ROOM:
        raise RefusedError(
            f"The foot of the page, with the seal, needs {y / mm:.1f} mm of height and has "
            f"{FOOT_ROOM / mm:.1f} mm.",
            "Shorten the name of the house and print again.",
        )
    return Strip(FOOT_ROOM, tuple(marks))


def write_pages(
    out: BinaryIO, title: str, author: str, pages: int, draw: Draw, feet: Callable[[int], Strip]
) -> None:
    """Write a paper.

    Args:
        out: Where its bytes go, at once and only if every page could be drawn.
        title: The title it carries.
        author: Who made it.
        pages: How many pages.
        draw: Draws the body of each.
        feet: Gives the foot of each.
    """
    whole = BytesIO()
    # invariant: no clock and no chance in it, so that the same view gives the same bytes.
    canvas = Canvas(whole, pagesize=A4, pageCompression=1, invariant=1, lang="en-GB")
    canvas.setTitle(title)
    canvas.setAuthor(author)
    canvas.setSubject(title)
    # ReportLab would name itself.
    canvas.setCreator(author)
    canvas.setProducer(author)
    for page in range(pages):
        draw(canvas, page)
        draw_strips(canvas, [feet(page)], BELOW + FOOT_ROOM)
        canvas.showPage()
    canvas.save()
    out.write(whole.getvalue())
