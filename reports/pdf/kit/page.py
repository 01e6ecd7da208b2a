"""The sheet every paper is printed on: a running head above, the seal at its foot.

Guarantees: the same view gives the same bytes; every page says whose it is and which of how many;
no printer is asked to scale it; all type is embedded; nothing is written to the stream until every
page is drawn. Refuses: a seal too long for the foot.

What is drawn stands on 180 mm between equal margins, so that A4 and Letter differ only in how much
a page holds.
"""

import os
from collections.abc import Callable, Sequence
from datetime import UTC, datetime
from io import BytesIO
from typing import BinaryIO

from msgspec import Struct
from reportlab.lib.pagesizes import A4, LETTER
from reportlab.lib.units import mm
from reportlab.lib.utils import TimeStamp
from reportlab.pdfgen.canvas import Canvas

from ledger.domain.evidence.seals import in_symbol
from ledger.errors import RefusedError
from reports.kit.frame import Frame, Heading, PageSize
from reports.pdf.kit.fonts import BOLD, MEDIUM, REGULAR, register
from reports.pdf.kit.marks import Across, Mark, Rule, Symbol, Words
from reports.pdf.kit.strips import Section, Strip, draw_strips, paginate
from reports.pdf.kit.styles import CELL, RULE, RUNNING, SMALL, SMALL_PT
from reports.pdf.kit.text import Face, fitting, width_of, wrap

WIDTH = A4[0]
"""The width in points that lengths are reckoned on; a wider sheet has wider margins."""

SIDE = 15 * mm
"""Margin left and right."""

INNER = WIDTH - 2 * SIDE
"""Width between the margins: 180 mm, twelve columns of 15 mm."""

BELOW = 7 * mm
"""What stays blank below the foot: most printers reach that far."""

FOOT_ROOM = 19 * mm
"""Height kept for the foot."""

TOP = 18 * mm
"""Down to the first line of the body."""

RUNNING_TOP = 9 * mm
"""Down to the running head."""

FOOT_LEAD = Face(MEDIUM, SMALL_PT, SMALL.spacing)
"""The face of the line above the seal."""

SEAL_SQUARE = 18 * mm
"""Side of the square for the QR symbol that says the seal."""

FOOT_INNER = INNER - SEAL_SQUARE - 3 * mm
"""Width of the foot's words."""

ACROSS = Face(BOLD, 120)
"""A word across a page, as large as is told from afar."""

PAGE_ROOM = 24 * mm
"""Width kept for "page x of y"."""


class Size(Struct, frozen=True):
    """A sheet in points."""

    width: float
    height: float

    @property
    def body(self) -> float:
        """Height for the body of a page."""
        return self.height - TOP - BELOW - FOOT_ROOM - 3 * mm

    @property
    def shift(self) -> float:
        """How far all moves to the right, to stand in the middle."""
        return (self.width - WIDTH) / 2


SIZES: dict[PageSize, Size] = {"A4": Size(*A4), "Letter": Size(*LETTER)}
"""The sheets."""

Draw = Callable[[Canvas, int], None]
"""Draws a page by its number, counted from 0, its left margin at `SIDE`."""


def foot(lead: str, seal: Sequence[str]) -> Strip:
    """Lay out the foot of a page; a QR symbol says the seal.

    Args:
        lead: As of when it shows the book, in words.
        seal: The lines of the book's seal.

    Raises:
        RefusedError: It is too high for the foot of a page.
    """
    y = 1.5 * mm
    symbol = Symbol(
        WIDTH - SIDE - SEAL_SQUARE, FOOT_ROOM, in_symbol(seal), SEAL_SQUARE, LEAST_SEAL_DOTS
    )
    marks: list[Mark] = [Rule(SIDE, 0, WIDTH - SIDE, 0, RULE), symbol]
    for words, face in ((lead, FOOT_LEAD), *((line, SMALL) for line in seal)):
        for text in wrap(words, face, lambda _: FOOT_INNER) if words else ():
            marks.append(Words(SIDE, y + face.drop, text, face))
            y += face.leading
    if y > FOOT_ROOM:
        raise RefusedError(
            f"The foot of the page, with the seal, needs {y / mm:.1f} mm of height and has "
            f"{FOOT_ROOM / mm:.1f} mm.",
            "Shorten the name of the house and print again.",
        )
    return Strip(FOOT_ROOM, tuple(marks))


LEAST_SEAL_DOTS = 5
"""Dots of 300 dpi a module of the seal: 0.42 mm, which a second photocopy still shows."""


def running_head(heading: Heading, page: int, pages: int) -> Strip:
    """Lay out what stands above each page: whose it is, what that is, where it stands, which page.

    Args:
        heading: What the paper is.
        page: Which page, counted from 1.
        pages: How many there are.
    """
    code = fitting(heading.code, RUNNING, INNER / 2)
    after = SIDE + width_of(code, RUNNING) + 3 * mm
    about = ", ".join(part for part in (heading.product, heading.status) if part)
    room = WIDTH - SIDE - PAGE_ROOM - after
    return Strip(
        6 * mm,
        (
            Words(SIDE, RUNNING.drop, code, RUNNING),
            Words(after, RUNNING.drop, fitting(about or heading.kind, CELL, room), CELL),
            Words(WIDTH - SIDE, RUNNING.drop, f"Page {page} of {pages}", CELL, "right"),
            Rule(SIDE, 6.5 * mm, WIDTH - SIDE, 6.5 * mm, RULE),
        ),
    )


def write_paper(out: BinaryIO, frame: Frame, heading: Heading, *parts: Sequence[Section]) -> None:
    """Write a paper: its sections shared out over pages with running head and foot.

    Args:
        out: Where its bytes go, at once and only if every page could be drawn.
        frame: Its house, seal and date.
        heading: What it is.
        parts: Its sections in order; each part begins a new page.

    Raises:
        RefusedError: A part that must stay in one piece is higher than a page.
    """
    register()
    size = SIZES[frame.size]
    pages = [page for sections in parts for page in paginate(sections, size.body)]
    below = foot(frame.stood, frame.seal)

    def draw(canvas: Canvas, page: int) -> None:
        if heading.across:
            Across(WIDTH / 2, size.height / 2, heading.across, ACROSS, 55.0).draw(
                canvas, size.height
            )
        head = running_head(heading, page + 1, len(pages))
        draw_strips(canvas, [head], size.height - RUNNING_TOP)
        draw_strips(canvas, pages[page], size.height - TOP)
        draw_strips(canvas, [below], BELOW + FOOT_ROOM)

    write_pages(out, frame, heading.title, len(pages), draw)


def write_pages(out: BinaryIO, frame: Frame, title: str, pages: int, draw: Draw) -> None:
    """Write pages that draw all of themselves.

    Args:
        out: Where its bytes go, at once and only if every page could be drawn.
        frame: Its house and date, and the sheet it is printed on.
        title: The title it carries.
        pages: How many pages.
        draw: Draws each.
    """
    size = SIZES[frame.size]

    def shifted(canvas: Canvas, page: int) -> None:
        canvas.translate(size.shift, 0)
        draw(canvas, page)

    write_sheets(out, frame, title, pages, shifted, size)


def write_sheets(
    out: BinaryIO, frame: Frame, title: str, pages: int, draw: Draw, size: Size
) -> None:
    """Write pages of any size that draw all of themselves; as `write_pages`."""
    whole = BytesIO()
    canvas = new_canvas(whole, size, frame.shown_at)
    canvas.setTitle(title)
    canvas.setAuthor(frame.house_name)
    canvas.setSubject(title)
    # ReportLab would name itself.
    canvas.setCreator(frame.house_name)
    canvas.setProducer(frame.house_name)
    for page in range(pages):
        draw(canvas, page)
        canvas.showPage()
    canvas.save()
    out.write(whole.getvalue())


def new_canvas(whole: BytesIO, size: Size, shown_at: datetime | None) -> Canvas:
    """Open a paper that is dated by its newest entry, shows its title, and is never scaled."""
    register()
    # invariant: no clock and no chance in it, so that the same view gives the same bytes.
    canvas = Canvas(
        whole,
        pagesize=(size.width, size.height),
        pageCompression=1,
        invariant=1,
        lang="en-GB",
        # Else it would open with a face that no paper embeds; its stub holds a wrong type.
        initialFontName=REGULAR,  # type: ignore[arg-type]
    )
    _date(canvas, shown_at)
    canvas.setViewerPreference("PrintScaling", "None")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    return canvas


def _date(canvas: Canvas, shown_at: datetime | None) -> None:
    """Date a paper, unless SOURCE_DATE_EPOCH does, which ReportLab reads itself."""
    if shown_at is None or os.environ.get("SOURCE_DATE_EPOCH", "").strip():
        return
    stamp = TimeStamp(1)
    moment = shown_at.astimezone(UTC)
    stamp.t, stamp.lt = moment.timestamp(), moment.timetuple()
    stamp.YMDhms = tuple(stamp.lt)[:6]
    # ReportLab has no other way to date a paper.
    canvas._doc._timeStamp = stamp  # type: ignore[attr-defined]
