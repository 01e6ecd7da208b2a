"""The contact sheet: the first page of every paper, small, side by side."""

from collections.abc import Mapping

from PIL import Image

ACROSS = 6
"""Papers in a row."""
WIDE, HIGH, GAP = 180, 255, 10
"""Room for one in dots, and between two."""
BACKGROUND = 225
"""A grey on which white paper stands out."""


def contact_sheet(firsts: Mapping[str, Image.Image]) -> Image.Image:
    """Return all first pages on one picture, in their order."""
    rows = -(-len(firsts) // ACROSS)
    size = (ACROSS * (WIDE + GAP) + GAP, rows * (HIGH + GAP) + GAP)
    sheet = Image.new("L", size, BACKGROUND)
    for number, page in enumerate(firsts.values()):
        row, column = divmod(number, ACROSS)
        small = page.copy()
        small.thumbnail((WIDE, HIGH), Image.Resampling.LANCZOS)
        sheet.paste(small, (GAP + column * (WIDE + GAP), GAP + row * (HIGH + GAP)))
    return sheet
