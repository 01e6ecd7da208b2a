"""The typeface of every paper.

Guarantees: static faces of one free family with Latin, Greek, Cyrillic and Vietnamese, embedded
in each paper; what they have no shape for, and characters that print nothing, are told apart, so
that nothing vanishes silently.
"""

import unicodedata
from functools import cache
from importlib.resources import as_file, files

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont, TTFontFace

from reports.pdf.kit.figures import use_equal_width

REGULAR = "FiraSans-Regular"
"""For running text."""

MEDIUM = "FiraSans-Medium"
"""For values and column heads."""

BOLD = "FiraSans-Bold"
"""For what is read first: product, lot code, section heads."""

ITALIC = "FiraSans-Italic"
"""For notes."""

FACES = (REGULAR, MEDIUM, BOLD, ITALIC)
"""All of them."""


@cache
def register() -> dict[str, TTFontFace]:
    """Make the faces known to the paper writer; once is enough, more does nothing.

    Returns:
        Each face by its font.
    """
    faces = {}
    for font in FACES:
        # A package may lie in an archive, and ReportLab wants a file.
        with as_file(files("fontpkg_fira_sans") / "files" / f"{font}.ttf") as path:
            face = TTFont(font, str(path))
        use_equal_width(face.face)
        pdfmetrics.registerFont(face)
        faces[font] = face.face
    return faces


@cache
def printable(font: str) -> frozenset[str]:
    """Return the characters that a font has a shape for.

    >>> set("≥5 °C, Ελλάδα, Россия, Việt Nam") <= printable(REGULAR), "☃" in printable(REGULAR)
    (True, False)
    """
    glyphs = register()[font].charToGlyph
    return frozenset(c for c in map(chr, glyphs) if unicodedata.category(c)[0] != "C")
