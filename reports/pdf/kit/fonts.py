"""The typeface of every paper.

Guarantees: static faces of one free family with Latin, Greek, Cyrillic and Vietnamese, embedded
in each paper; a text that passes `check_glyphs` prints whole. Refuses: a character that the face
has no shape for and characters that print nothing, so that nothing vanishes silently.
"""

import unicodedata
from functools import cache
from importlib.resources import as_file, files

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont, TTFontFace

from ledger.errors import RefusedError
from reports.pdf.kit.figures import use_equal_width

REGULAR = "FiraSans-Regular"
"""For running text."""

MEDIUM = "FiraSans-Medium"
"""For values and column heads."""

BOLD = "FiraSans-Bold"
"""For what is read first: product, lot code, section heads."""

ITALIC = "FiraSans-Italic"
"""For notes."""

FACES = {
    REGULAR: "Fira Sans Regular",
    MEDIUM: "Fira Sans Medium",
    BOLD: "Fira Sans Bold",
    ITALIC: "Fira Sans Italic",
}
"""Each face's name in words."""

SHOWN = 60
"""How many characters of a refused text its message quotes."""


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
def _printable(font: str) -> frozenset[str]:
    """Collect the characters that the face shows."""
    glyphs = register()[font].charToGlyph
    return frozenset(c for c in map(chr, glyphs) if unicodedata.category(c)[0] != "C")


def _named(char: str) -> str:
    """Name a character so that it can be found, even if it is invisible."""
    name = unicodedata.name(char, "")
    code = f"U+{ord(char):04X} {name}".rstrip()
    return f"“{char}” ({code})" if char.isprintable() else f"({code})"


def check_glyphs(text: str, font: str) -> None:
    """Make sure that every character of a text can be printed.

    Args:
        text: What is to be printed, in one line.
        font: One of `FACES`.

    Raises:
        RefusedError: Some characters are not in the face; all of them are named.

    Example:
        >>> check_glyphs("≥5 °C, Ελλάδα, Россия, Việt Nam", REGULAR)
        >>> check_glyphs("1 ☃", REGULAR)
        Traceback (most recent call last):
        ledger.errors.RefusedError: The text “1 ☃” cannot be printed: the font Fira Sans Regular \
has no shape for “☃” (U+2603 SNOWMAN). Write it with other characters and print again.
    """
    if missing := set(text) - _printable(font):
        named = ", ".join(_named(c) for c in sorted(missing))
        shown = text if len(text) <= SHOWN else f"{text[:SHOWN]}…"
        shown = "".join(c if c.isprintable() else " " for c in shown)
        raise RefusedError(
            f"The text “{shown}” cannot be printed: the font {FACES[font]} has no shape for "
            f"{named}.",
            "Write it with other characters and print again.",
        )
