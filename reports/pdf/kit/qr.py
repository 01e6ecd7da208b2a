"""A QR symbol drawn as shapes, sharp at any printer.

Guarantees: every module is a whole number of the printer's dots and at least two, with the
quiet zone of four modules that readers need; it stays inside the square it is given; a paper
holds each symbol once, however often it shows it. Refuses: an empty text and a square too small to
be read back.

References:
    ISO/IEC 18004 (quiet zone of four modules).
"""

from collections.abc import Iterator
from hashlib import sha256
from itertools import groupby

import segno
from reportlab.lib.units import inch, mm
from reportlab.pdfgen.canvas import Canvas

from ledger.errors import RefusedError

DPI = 300
"""Dots an inch of the usual printer."""
DOT = inch / DPI
"""One of its dots in points."""

LEAST_DOTS = 2
"""Dots a module: below two, readers fail (measured at 203 and 300 dpi)."""

QUIET = 4
"""Light modules around the symbol."""

LONG = 60
"""Characters from which on the size of a module matters more than what may be lost of it."""


def _module_dots(modules: int, text: str, size_mm: float, least: int, dpi: int) -> int:
    """Choose how many dots a module takes so that symbol and quiet zone fit."""
    # A square of a whole number of dots must not lose one to the rounding of floats.
    dots = int(size_mm * mm / inch * dpi + 1e-9) // modules
    if dots < least:
        needed = modules * least * inch / dpi / mm
        raise RefusedError(
            f"The QR symbol of “{text}” needs a square of {needed:.1f} mm to be readable "
            f"and has {size_mm:.1f} mm.",
            "Shorten the code and print again.",
        )
    return dots


def _runs(row: bytearray) -> Iterator[tuple[int, int]]:
    """Give the start and length of each run of dark modules in a row."""
    column = 0
    for dark, cells in groupby(row):
        length = sum(1 for _ in cells)
        if dark:
            yield column, length
        column += length


def draw_qr(
    canvas: Canvas,
    text: str,
    x_mm: float,
    y_mm: float,
    size_mm: float,
    least_dots: int = LEAST_DOTS,
    dpi: int = DPI,
) -> None:
    """Draw a text as a QR symbol, centred in a square.

    Args:
        canvas: Where to draw.
        text: What the symbol says.
        x_mm: Left edge of the square, quiet zone included.
        y_mm: Bottom edge of the square.
        size_mm: Side of the square; the symbol takes the largest whole dots that fit.
        least_dots: Dots that a module must take at least.
        dpi: Dots an inch of the printer.

    Raises:
        RefusedError: The text is empty or the square too small for it.
    """
    if not text:
        raise RefusedError("A QR symbol needs a text and got none.", "Give the lot's code.")
    name = f"qr{sha256(f'{size_mm:.4f} {dpi} {text}'.encode()).hexdigest()[:16]}"
    # A form of the file: ten thousand labels show one symbol, encoded once.
    if not canvas.hasForm(name):
        canvas.beginForm(name, 0, 0, size_mm * mm, size_mm * mm)
        _draw_symbol(canvas, text, size_mm, least_dots, dpi)
        canvas.endForm()
    canvas.saveState()
    canvas.translate(x_mm * mm, y_mm * mm)
    canvas.doForm(name)
    canvas.restoreState()


def _draw_symbol(canvas: Canvas, text: str, size_mm: float, least_dots: int, dpi: int) -> None:
    """Draw a symbol in a square whose lower left corner is the origin."""
    # make_qr, since make() takes a micro symbol for a short text; the level is raised as far as
    # the symbol stays as large as it is. A long text has the low one, for larger modules.
    rows = segno.make_qr(text, error="l" if len(text) > LONG else "m").matrix
    modules = len(rows) + 2 * QUIET
    module = _module_dots(modules, text, size_mm, least_dots, dpi) * inch / dpi
    spare = (size_mm * mm - modules * module) / 2
    path = canvas.beginPath()
    for line, row in enumerate(rows, start=QUIET + 1):
        for column, length in _runs(row):
            x = spare + (QUIET + column) * module
            path.rect(x, size_mm * mm - spare - line * module, length * module, module)
    canvas.setFillGray(0)
    canvas.drawPath(path, stroke=0, fill=1)
