"""Marks: whatever leaves ink on a page.

Guarantees: a mark is plain data until it is drawn, and drawing it adds nothing. Refuses: a symbol
too small to be read, when drawn.

All lengths are in points; `y` is measured downwards from the top of what the mark stands in.
"""

from collections.abc import Iterable

from msgspec import Struct
from msgspec.structs import replace
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from reports.pdf.kit.bars import draw_bars
from reports.pdf.kit.qr import LEAST_DOTS, draw_qr
from reports.pdf.kit.text import Align, Face, draw_text, strike, width_of


class Words(Struct, frozen=True):
    """One line of text, its baseline at `y`."""

    x: float
    y: float
    text: str
    face: Face
    align: Align = "left"
    struck: bool = False
    is_white: bool = False
    """Whether it stands on black."""

    def draw(self, canvas: Canvas, top: float) -> None:
        """Put it on the page, with a line through it if struck."""
        y = top - self.y
        if self.is_white:
            canvas.setFillGray(1)
        draw_text(canvas, self.x, y, self.text, self.face, self.align)
        if self.struck and self.text:
            width = width_of(self.text, self.face)
            left = self.x - width if self.align == "right" else self.x
            strike(canvas, left, y, width, self.face.size)
        if self.is_white:
            canvas.setFillGray(0)


class Rule(Struct, frozen=True):
    """A straight line."""

    x: float
    y: float
    to_x: float
    to_y: float
    thickness: float
    is_dashed: bool = False

    def draw(self, canvas: Canvas, top: float) -> None:
        """Put it on the page."""
        canvas.setLineWidth(self.thickness)
        if self.is_dashed:
            canvas.setDash(*DASHES)
        canvas.line(self.x, top - self.y, self.to_x, top - self.to_y)
        if self.is_dashed:
            canvas.setDash()


DASHES = (6.0, 3.0)
"""Points of line and of gap, long enough to stay apart on a second photocopy."""


class Upright(Struct, frozen=True):
    """One line of text that is read from below, its end at `y`, its baseline at `x`."""

    x: float
    y: float
    text: str
    face: Face

    def draw(self, canvas: Canvas, top: float) -> None:
        """Put it on the page."""
        canvas.saveState()
        canvas.translate(self.x, top - self.y)
        canvas.rotate(90)
        draw_text(canvas, 0, 0, self.text, self.face, "right")
        canvas.restoreState()


class Box(Struct, frozen=True):
    """A rectangle with its upper edge at `y`, filled with a grey, in a frame or without one."""

    x: float
    y: float
    width: float
    height: float
    grey: float | None = None
    """0 is black, 1 is white; None leaves it empty."""
    frame: float = 0.0
    """Thickness of its frame; 0 for none."""

    def draw(self, canvas: Canvas, top: float) -> None:
        """Put it on the page."""
        if self.grey is not None:
            canvas.setFillGray(self.grey)
        canvas.setLineWidth(self.frame)
        canvas.rect(
            self.x,
            top - self.y - self.height,
            self.width,
            self.height,
            stroke=int(self.frame > 0),
            fill=int(self.grey is not None),
        )
        canvas.setFillGray(0)


class Dot(Struct, frozen=True):
    """A round dot with its middle at `x` and `y`, hollow or full."""

    x: float
    y: float
    radius: float
    is_hollow: bool = False

    def draw(self, canvas: Canvas, top: float) -> None:
        """Put it on the page."""
        canvas.setLineWidth(DOT_LINE)
        canvas.setFillGray(1 if self.is_hollow else 0)
        canvas.circle(self.x, top - self.y, self.radius, stroke=1, fill=1)
        canvas.setFillGray(0)


DOT_LINE = 0.7
"""Thickness of the line around a dot."""


class Patch(Struct, frozen=True):
    """A shape between corners, filled black or white."""

    corners: tuple[tuple[float, float], ...]
    is_white: bool = False

    def draw(self, canvas: Canvas, top: float) -> None:
        """Put it on the page."""
        path = canvas.beginPath()
        (x, y), *others = self.corners
        path.moveTo(x, top - y)
        for x, y in others:
            path.lineTo(x, top - y)
        path.close()
        canvas.setFillGray(1 if self.is_white else 0)
        canvas.drawPath(path, stroke=0, fill=1)
        canvas.setFillGray(0)


class Bars(Struct, frozen=True):
    """A Code 128 with its lower edge at `y`, its bars a whole number of the printer's dots wide."""

    x: float
    y: float
    text: str
    module: float
    height: float

    def draw(self, canvas: Canvas, top: float) -> None:
        """Put it on the page."""
        draw_bars(canvas, self.text, self.x, top - self.y, self.module, self.height)


class Symbol(Struct, frozen=True):
    """A QR symbol in a square with its bottom edge at `y`."""

    x: float
    y: float
    text: str
    size: float
    least_dots: int = LEAST_DOTS
    dpi: int = 300

    def draw(self, canvas: Canvas, top: float) -> None:
        """Put it on the page."""
        draw_qr(
            canvas,
            self.text,
            self.x / mm,
            (top - self.y) / mm,
            self.size / mm,
            self.least_dots,
            self.dpi,
        )


class Across(Struct, frozen=True):
    """Pale words across something, their middle at `x` and `y`, rising by an angle in degrees."""

    x: float
    y: float
    text: str
    face: Face
    angle: float

    def draw(self, canvas: Canvas, top: float) -> None:
        """Put it on the page, so pale that what stands over it stays legible."""
        canvas.saveState()
        canvas.setFillGray(PALE)
        canvas.translate(self.x, top - self.y)
        canvas.rotate(self.angle)
        left = -width_of(self.text, self.face) / 2
        draw_text(canvas, left, -self.face.size / 3, self.text, self.face, "left")
        canvas.restoreState()


PALE = 0.8
"""How grey words across are: 0 is black, 1 is white."""
Mark = Words | Upright | Rule | Box | Dot | Patch | Bars | Symbol | Across
"""Whatever leaves ink."""


def lowered(marks: Iterable[Mark], down: float) -> tuple[Mark, ...]:
    """Move marks down."""
    return tuple(_moved(mark, 0.0, down) for mark in marks)


def shifted(marks: Iterable[Mark], right: float) -> tuple[Mark, ...]:
    """Move marks to the right."""
    return tuple(_moved(mark, right, 0.0) for mark in marks)


def _moved(mark: Mark, right: float, down: float) -> Mark:
    match mark:
        case Rule(x=x, y=y, to_x=to_x, to_y=to_y):
            return replace(mark, x=x + right, y=y + down, to_x=to_x + right, to_y=to_y + down)
        case Patch(corners=corners):
            return replace(mark, corners=tuple((x + right, y + down) for x, y in corners))
        case _:
            return replace(mark, x=mark.x + right, y=mark.y + down)
