"""Figures of equal width, so that the columns of numbers and times stand in line.

Guarantees: the mapping is read from the font's own tables. Refuses: to guess; a font without such
figures gives an empty mapping.

References:
    OpenType specification, GSUB table: feature `tnum`, lookup type 1 (single substitution).
"""

from collections.abc import Iterator
from struct import unpack_from

from reportlab.pdfbase.ttfonts import TTFontFace

SINGLE = 1
"""The lookup type that replaces one glyph by one other."""


def _shorts(data: bytes, at: int, count: int) -> tuple[int, ...]:
    """Read unsigned 16-bit numbers."""
    return unpack_from(f">{count}H", data, at)


def _listed(data: bytes, at: int) -> tuple[int, ...]:
    """Read a count and then as many numbers."""
    return _shorts(data, at + 2, _shorts(data, at, 1)[0])


def _covered(data: bytes, at: int) -> list[int]:
    """Read a coverage table: the glyphs a lookup works on, in order."""
    kind, count = _shorts(data, at, 2)
    if kind == 1:
        return list(_shorts(data, at + 4, count))
    ranges = (_shorts(data, at + 4 + 6 * n, 3) for n in range(count))
    return [glyph for first, last, _ in ranges for glyph in range(first, last + 1)]


def _replaced(data: bytes, at: int) -> Iterator[tuple[int, int]]:
    """Read a single substitution: pairs of glyph and replacement."""
    kind, coverage, third = _shorts(data, at, 3)
    glyphs = _covered(data, at + coverage)
    if kind == 1:
        yield from ((glyph, (glyph + third) % 0x10000) for glyph in glyphs)
    else:
        yield from zip(glyphs, _shorts(data, at + 6, third), strict=True)


def _lookups(data: bytes, tag: bytes) -> set[int]:
    """Find the lookups of a feature."""
    features = _shorts(data, 6, 1)[0]
    numbers: set[int] = set()
    for n in range(_shorts(data, features, 1)[0]):
        record = features + 2 + 6 * n
        if data[record : record + 4] == tag:
            numbers.update(_listed(data, features + _shorts(data, record + 4, 1)[0] + 2))
    return numbers


def equal_width(gsub: bytes) -> dict[int, int]:
    """Read which glyphs of a font have a form of equal width.

    Args:
        gsub: The font's GSUB table; empty if it has none.

    Returns:
        For each such glyph the one of equal width, both by number.
    """
    if not gsub:
        return {}
    lookups = _shorts(gsub, 8, 1)[0]
    offsets = _listed(gsub, lookups)
    pairs: dict[int, int] = {}
    for number in _lookups(gsub, b"tnum"):
        lookup = lookups + offsets[number]
        if _shorts(gsub, lookup, 1)[0] == SINGLE:
            for subtable in _listed(gsub, lookup + 4):
                pairs.update(_replaced(gsub, lookup + subtable))
    return pairs


def use_equal_width(face: TTFontFace) -> None:
    """Make a face print its digits in their form of equal width."""
    table = face.get_table("GSUB")  # type: ignore[no-untyped-call]
    pairs = equal_width(bytes(table))
    for digit in map(ord, "0123456789"):
        glyph = face.charToGlyph[digit]
        glyph = pairs.get(glyph, glyph)
        face.charToGlyph[digit] = glyph
        # ReportLab counts widths in thousandths of the size, a font in units of its own.
        face.charWidths[digit] = 1000 * face.hmetrics[glyph][0] / face.unitsPerEm
