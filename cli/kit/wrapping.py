"""Lines wrapped at words to the width of a screen.

Guarantees: nothing is wider than the screen, a wide letter counted as two columns; a number stays
beside its unit while there is room; what is carried over is set in under the line it belongs to.
Refuses: to touch a line that fits. Loaded only for a screen.
"""

import re
from collections.abc import Iterator

from rich.cells import cell_len, chop_cells

UNITS = (
    *("% vol", "% mass", "%", "mL each", "mL", "cL", "dL", "L", "µL", "g each", "g/mL", "g/100mL"),
    *("g/L", "g", "kg", "mg/kg body weight", "mg/kg", "mg/L", "mg", "each"),
    *(
        "(?:US |imp )?(?:fl oz|pt|qt|gal)",
        "oz(?: av)?",
        "lb",
        "°C",
        "°Bx",
        "NTU",
        "kPa",
        "µm",
        "nm",
        "mm",
    ),
    *("d", "h", "min", "s", "[A-Z]{3}"),
)
"""What stays beside the number before it; three capitals are money."""
# A unit ends its word: 5 g is one piece, 5 games is two.
_AMOUNT = rf"[(~±<>≤≥−-]*\d[\d.,/–-]* (?:{'|'.join(UNITS)})[.,;:)]*(?!\S)"
_PIECE = re.compile(rf"\s*(?:{_AMOUNT}|\S+)")
_WORD = re.compile(r"\s*\S+")
_BEGINS = re.compile(r"\s+|\d+\. |\d+  (?=\S)")
HANG = 2
"""How much further in than its first line a line that is set in goes on."""


def wrapped(line: str, width: int, carried: str | None = None) -> list[str]:
    """Return a line as the lines of a screen.

    Args:
        line: The line.
        width: Columns of the screen.
        carried: What stands before each line but the first; None: blanks below the text of a
            numbered line, two more than those of a line set in, none else.

    >>> wrapped("1. Pretend Bar: 01 555 0101, mornings", 24)
    ['1. Pretend Bar: 01 555', '   0101, mornings']
    """
    if cell_len(line) <= width:
        return [line]
    before = below(line) if carried is None else carried
    lines, now = [], ""
    for piece in pieces(line, width - cell_len(before)):
        if cell_len(now + piece) <= width:
            now += piece
            continue
        if now:
            lines.append(now)
        *whole, last = chop_cells(piece.lstrip(), max(width - cell_len(before), 1))
        lines += [before + part for part in whole]
        now = before + last
    return [*lines, now]


def pieces(line: str, width: int | None = None) -> Iterator[str]:
    """Yield the words of a line with the blanks before them; a number and its unit are one.

    Args:
        line: The line.
        width: A number and its unit that are wider are two; None: they never are.

    >>> list(pieces("filled 15 x 250 mL, at 20 °C")), list(pieces("250 mL", 4))
    (['filled', ' 15', ' x', ' 250 mL,', ' at', ' 20 °C'], ['250', ' mL'])
    """
    for piece in _PIECE.findall(line):
        if width is None or cell_len(piece.lstrip()) <= width:
            yield piece
        else:
            yield from _WORD.findall(piece)


def below(line: str) -> str:
    """Return the blanks at which a line goes on.

    >>> below("plain"), below("  in failed lots"), below("12. Pretend Bar")
    ('', '    ', '    ')
    >>> below("724  2026-08-18 09:17  added: 40 mL")
    '     '
    """
    match = _BEGINS.match(line)
    if not match:
        return ""
    return " " * (len(match[0]) + HANG * match[0].isspace())
