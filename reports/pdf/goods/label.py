"""Sheets and rolls of labels.

Guarantees: as many labels as asked for, each where its layout has it, on as many pages as that
takes, front and back as neighbours where it has two panels; what is cut apart has marks outside the
trim; the book's seal stands below where there is room; a label is set and its symbol encoded once,
however many there are. Refuses: fewer than one label, and a label whose words do not fit when it
declares the least.
"""

from collections import defaultdict
from collections.abc import Sequence
from typing import BinaryIO

from msgspec.structs import replace
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ledger.errors import InputError, RefusedError
from reports.kit.format import plural
from reports.kit.frame import Frame
from reports.pdf.goods.label_panels import fit_panels
from reports.pdf.goods.layouts import DPIS, PANELS, USUAL_ON, Layout, Plate, shipped_layouts
from reports.pdf.goods.seats import seats
from reports.pdf.kit.marks import Box, Mark, Rule, Words
from reports.pdf.kit.page import BELOW, FOOT_ROOM, WIDTH, Size, foot, write_sheets
from reports.pdf.kit.strips import Strip, draw_strips
from reports.pdf.kit.styles import CELL, RULE, SMALL
from reports.views.goods import LabelSheetView

TICK, OFF = 2 * mm, 0.5 * mm
"""Length of a mark to cut along, and how far it stands off the trim."""
EDGE = 4 * mm
"""What stays blank below the seal: the marks to cut along need the rest."""
RULER = 100 * mm
"""Length of the line on a sheet to calibrate by."""


def label_sheet(
    view: LabelSheetView, out: BinaryIO, layout: Layout | None = None, start_at: int = 1
) -> None:
    """Write labels of one lot as PDF; as `label_sheets`."""
    label_sheets([view], out, layout, start_at)


def label_sheets(
    views: Sequence[LabelSheetView],
    out: BinaryIO,
    layout: Layout | None = None,
    start_at: int = 1,
) -> None:
    """Write labels as PDF, those of one lot after those of another.

    Args:
        views: What the labels of each lot say and how many there are.
        out: Where the bytes go; untouched if anything is refused.
        layout: Where they stand; None: as usual.
        start_at: The first label that is still free on the first sheet, counted from 1.

    Raises:
        RefusedError: There is no label to print, the words of one do not fit, or the sheet has no
            such label.
    """
    frame = views[0].frame
    layout = layout or shipped_layouts()[USUAL_ON[frame.size]]
    runs = [(_fitted(view, layout), view.count) for view in views]
    lead = ", ".join(f"{plural(view.count, 'label')} of lot {view.label.lot}" for view in views)
    lead = f"{lead}, front and back" if layout.panels > 1 else lead
    title = f"Labels {', '.join(view.label.lot for view in views)}"
    write_labels(out, frame, title, lead, runs, layout, start_at)


def _fitted(view: LabelSheetView, layout: Layout) -> "Panels":
    if view.count < 1:
        raise RefusedError(
            f"A sheet needs at least 1 label and {view.count} were asked for.",
            "Say how many labels to print.",
        )
    return tuple(fitted.marks for fitted in fit_panels(view.label, layout))


Panels = tuple[tuple[Mark, ...], ...]
"""The marks of one label, panel by panel."""
Run = tuple[Panels, int]
"""The marks of one label, and how many of it."""


def write_labels(
    out: BinaryIO,
    frame: Frame,
    title: str,
    lead: str,
    runs: Sequence[Run],
    layout: Layout,
    start_at: int = 1,
) -> None:
    """Write labels whose marks are known, one run after the other.

    Raises:
        RefusedError: The sheet has no label to start at.
    """
    on_page = defaultdict[int, list[tuple[str, int]]](list)
    forms = (
        _forms(number, len(panels)) for number, (panels, n) in enumerate(runs) for _ in range(n)
    )
    for panels, places in zip(forms, seats(layout, len(runs[0][0]), start_at), strict=False):
        for form, (page, place) in zip(panels, places, strict=True):
            on_page[page].append((form, place))
    pages = max(on_page) + 1

    def draw(canvas: Canvas, page: int) -> None:
        if page == 0:
            _keep(canvas, runs, layout.plate)
        _lay_marks(canvas, layout)
        for form, place in on_page[page]:
            _put(canvas, form, *layout.place(place))
        below = _below(frame, f"{lead}, page {page + 1} of {pages}", layout)
        draw_strips(canvas, [below], below.height + EDGE)

    write_sheets(out, frame, title, pages, draw, Size(*layout.page_points))


def _keep(canvas: Canvas, runs: Sequence[Run], plate: Plate) -> None:
    """Keep each label as a form of the file, drawn once and shown often."""
    for number, (panels, _) in enumerate(runs):
        for form, marks in zip(_forms(number, len(panels)), panels, strict=True):
            canvas.beginForm(form, 0, 0, plate.width, plate.height)
            for mark in marks:
                mark.draw(canvas, plate.height)
            canvas.endForm()


def _forms(number: int, panels: int) -> tuple[str, ...]:
    """Return the names under which the panels of a label are kept in the file."""
    return tuple(f"label{number}-{panel}" for panel in range(panels))


def _put(canvas: Canvas, form: str, x: float, y: float) -> None:
    canvas.saveState()
    canvas.translate(x, y)
    canvas.doForm(form)
    canvas.restoreState()


def _lay_marks(canvas: Canvas, layout: Layout) -> None:
    """Draw marks to cut along, outside of all labels."""
    if not layout.cut:
        return
    canvas.setLineWidth(RULE)
    left, below = layout.place(layout.per_page - layout.across)
    _, top = layout.place(0)
    top += layout.plate.height
    right = layout.place(layout.across - 1)[0] + layout.plate.width
    for x in sorted({edge for n in range(layout.across) for edge in _edges(layout, n)}):
        canvas.line(x, top + OFF, x, top + OFF + TICK)
        canvas.line(x, below - OFF, x, below - OFF - TICK)
    for row in range(layout.down):
        y = layout.place(row * layout.across)[1]
        for edge in (y, y + layout.plate.height):
            canvas.line(left - OFF - TICK, edge, left - OFF, edge)
            canvas.line(right + OFF, edge, right + OFF + TICK, edge)


def _edges(layout: Layout, column: int) -> tuple[float, float]:
    x, _ = layout.place(column)
    return round(x, 3), round(x + layout.plate.width, 3)


def _below(frame: Frame, lead: str, layout: Layout) -> Strip:
    """Lay out what stands below the labels: the seal, one line of it, or nothing, by the room."""
    told = ". ".join(part for part in (lead, frame.stood) if part)
    if layout.below >= BELOW + FOOT_ROOM - 1 and layout.page_points[0] >= WIDTH:
        return foot(told, frame.seal)
    if layout.below >= BELOW + SMALL.leading and layout.page_points[0] >= WIDTH:
        _, *numbers = frame.seal
        line = f"{lead}. {' '.join(numbers)}"
        return Strip(SMALL.leading, (Words(10 * mm, SMALL.drop, line, SMALL),))
    return Strip(0)


def calibration(frame: Frame, layout: Layout, out: BinaryIO) -> None:
    """Write the frames of a layout, to hold against a sheet of labels before it is printed on.

    Args:
        frame: Its house and date.
        layout: Where the labels stand.
        out: Where the bytes go.
    """
    plate = layout.plate

    def draw(canvas: Canvas, _page: int) -> None:
        for number in range(layout.per_page):
            x, y = layout.place(number)
            Box(x, 0, plate.width, plate.height, None, RULE).draw(canvas, y + plate.height)
            Words(x + 2 * mm, CELL.size + 2 * mm, str(number + 1), CELL).draw(
                canvas, y + plate.height
            )
        x, y = layout.place(0)
        ruler = min(RULER, layout.page_points[0] - 2 * x - 4 * mm)
        told = f"{layout.name}: this line is {ruler / mm:.0f} mm long; each frame is {plate.size}"
        middle = y + plate.height / 2
        Rule(x + 2 * mm, 0, x + 2 * mm + ruler, 0, RULE).draw(canvas, middle)
        Words(x + 2 * mm, SMALL.size + 1 * mm, told, SMALL).draw(canvas, middle)

    write_sheets(out, frame, f"Layout {layout.name}", 1, draw, Size(*layout.page_points))


def with_dpi(layout: Layout, dpi: int | None) -> Layout:
    """Return a layout for a printer of some dots an inch.

    Raises:
        InputError: No printer has so many.
    """
    if dpi is None:
        return layout
    if dpi not in DPIS:
        raise InputError(f"No printer of labels has {dpi} dpi.", "Give --dpi with 203, 300 or 600.")
    return replace(layout, dpi=dpi)


def with_panels(layout: Layout, panels: int | None) -> Layout:
    """Return a layout for labels of one panel or two; as it says itself where none is given.

    Raises:
        InputError: No label has so many.
    """
    if panels is None:
        return layout
    if panels not in PANELS:
        raise InputError(
            f"A label has 1 panel or 2, not {panels}.",
            "Give --panels 1, or --panels 2 for front and back.",
        )
    return replace(layout, panels=panels)
