"""A Code 128 for any scanner, its bars whole dots of the printer.

Guarantees: the quiet zone of ten modules on either side is kept; a text that begins with the mark
of GS1 is read as one. Refuses: a text with characters that the code lacks, and a width too small
for two dots a module.

References:
    ISO/IEC 15417 (quiet zone of ten modules); GS1 General Specifications, 5.4 (FNC1 in front).
"""

from reportlab.graphics.barcode.code128 import Code128
from reportlab.lib.units import inch, mm
from reportlab.pdfgen.canvas import Canvas

from ledger.errors import RefusedError

FNC1 = "\xf1"
"""Marks a GS1 text, and ends a value of open length; as ReportLab has it."""
QUIET = 10
"""Light modules on either side."""
LEAST_DOTS, MOST_DOTS = 2, 6
"""Dots a module: fewer are not read, more take room for nothing."""


def modules_of(text: str) -> int:
    """Return how many modules a text takes, without its quiet zones.

    Raises:
        RefusedError: The code has no such character.
    """
    plain = text.removeprefix(FNC1)
    if not (plain and plain.isascii() and plain.isprintable()):
        raise RefusedError(
            f"A bar code cannot say “{plain}”.", "It has letters of English, figures and signs."
        )
    modules: float = Code128(text, barWidth=1.0, quiet=0).width
    return round(modules)


def module_for(text: str, width: float, dpi: int) -> float:
    """Return how wide a module may be in a width, in points, a whole number of dots.

    Raises:
        RefusedError: The width is too small.
    """
    modules, dot = modules_of(text) + 2 * QUIET, inch / dpi
    dots = min(int(width / dot + 1e-9) // modules, MOST_DOTS)
    if dots < LEAST_DOTS:
        needed = modules * LEAST_DOTS * dot / mm
        raise RefusedError(
            f"The bar code of “{text.replace(FNC1, '')}” needs {needed:.1f} mm of width at {dpi} "
            f"dpi and has {width / mm:.1f} mm.",
            "Take a wider layout.",
        )
    return dots * dot


def draw_bars(canvas: Canvas, text: str, x: float, y: float, module: float, height: float) -> None:
    """Draw a text as Code 128, its lower left corner at a place, quiet zone included."""
    code = Code128(text, barWidth=module, barHeight=height, quiet=0)
    code.drawOn(canvas, x + QUIET * module, y)
