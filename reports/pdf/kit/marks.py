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

    def draw(self, canvas: Canvas, top: float) -> None:
        """Put it on the page."""
        canvas.setLineWidth(self.thickness)
        canvas.line(self.x, top - self.y, self.to_x, top - self.to_y)


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


class Symbol(Struct, frozen=True):
    """A QR symbol in a square with its bottom edge at `y`."""

    x: float
    y: float
    text: str
    size: float
    least_dots: int = LEAST_DOTS

    def draw(self, canvas: Canvas, top: float) -> None:
        """Put it on the page."""
        draw_qr(
            canvas,
            self.text,
            self.x / mm,
            (top - self.y) / mm,
            self.size / mm,
            self.least_dots,
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
Mark = Words | Rule | Box | Dot | Symbol | Across
"""Whatever leaves ink."""


def lowered(marks: Iterable[Mark], down: float) -> tuple[Mark, ...]:
    """Move marks down."""
    return tuple(
        replace(mark, y=mark.y + down, to_y=mark.to_y + down)
        if isinstance(mark, Rule)
        else replace(mark, y=mark.y + down)
        for mark in marks
    )


def shifted(marks: Iterable[Mark], right: float) -> tuple[Mark, ...]:
    """Move marks to the right."""
    return tuple(
        replace(mark, x=mark.x + right, to_x=mark.to_x + right)
        if isinstance(mark, Rule)
        else replace(mark, x=mark.x + right)
        for mark in marks
    )
