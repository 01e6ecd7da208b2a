"""Labels for the shelf, the bench and the carton: what stands on them and where.

Guarantees: every word and symbol stands inside the margins; what bars a lot from use is told by a
border that is seen from afar. Refuses: what does not fit, with the millimetres that it lacks
and the layouts that hold it.

References:
    Regulation (EC) No 1272/2008 (CLP), Annex I, 1.2.1 and Annex V: the flame in a square standing
    on a corner (from memory).
    GS1 General Specifications, 5.5: bars of a case are 31.75 mm high where there is room (from
    memory).
"""

from collections.abc import Iterator

from reportlab.lib.units import mm

from ledger.errors import RefusedError
from reports.pdf.goods.layouts import Plate, shipped_layouts
from reports.pdf.kit.bars import QUIET, module_for
from reports.pdf.kit.fonts import BOLD, MEDIUM, REGULAR
from reports.pdf.kit.marks import Bars, Mark, Patch, Rule, Symbol, Words
from reports.pdf.kit.text import Face, width_of, wrap
from reports.views.goods import TagView

BIG_PT, TITLE_PT, ROW_PT = 40.0, 12.0, 8.0
"""The word to be read from afar, the title, the rest, in points."""
LEAST_BIG_PT = 20.0
"""The least that the big word may shrink to on a narrow label."""
BORDER = 4 * mm
"""Width of the border of diagonals."""
BARS_HEIGHT, MOST_BARS = 8 * mm, 32 * mm
"""Height of the bars: at least, and at most, which a case has where there is room."""
BLANK = 7 * mm
"""Height of a blank to write in."""
GAP = 0.6 * mm
"""Between two parts."""
ABOVE_BARS, UNDER_BARS = 2 * mm, 0.5 * mm
"""Between the bars and what stands above and below them."""


def lay_tag(tag: TagView, plate: Plate) -> tuple[Mark, ...]:
    """Set a label for the shelf, the bench or the carton.

    Args:
        tag: What it says.
        plate: What it is printed on.

    Returns:
        Its marks; `y` is measured downwards from its upper edge, in points.

    Raises:
        RefusedError: It does not fit.
    """
    for scale in SCALES:
        marks, lacks = _laid(tag, plate, scale)
        if lacks <= A_HAIR:
            return (*(_border(plate) if tag.is_barred else ()), *marks)
    held = " or ".join(_layouts_that_hold(tag)[:MOST_NAMED])
    raise RefusedError(
        f"The label of {tag.lot} does not fit {plate.size}: it lacks {lacks / mm:.1f} mm of "
        "height.",
        f"It fits with --layout {held}." if held else "Give a larger one with --layouts FILE.",
    )


def _layouts_that_hold(tag: TagView) -> list[str]:
    """Return the layouts that come with pottle and hold a label, the smallest labels first."""
    by_size = sorted(shipped_layouts().values(), key=lambda each: each.width * each.height)
    return [layout.name for layout in by_size if _holds(tag, layout.plate)]


def _holds(tag: TagView, plate: Plate) -> bool:
    try:
        return _laid(tag, plate, SCALES[-1])[1] <= A_HAIR
    except RefusedError:
        # Its bars are too wide.
        return False


MOST_NAMED = 3
"""Layouts that are named to who has to choose one."""


SCALES = (1.0, 0.9, 0.8, 0.7)
"""By how much all may become smaller, tried in order."""
A_HAIR = 0.01
"""What the rounding of floats may add."""


def _laid(tag: TagView, plate: Plate, scale: float) -> tuple[list[Mark], float]:
    """Set a label at a scale; return its marks and how much height it lacks, in points."""
    pad = plate.padding + (BORDER if tag.is_barred else 0.0)
    inner = plate.width - 2 * pad
    side = _side(tag, plate)
    room = inner - side - (2 * mm if side else 0.0)
    marks, y = list(_beside(tag, plate, pad)), pad
    for text, face in _lines(tag, room, scale):
        width = room if y < pad + side else inner
        for line in wrap(text, face, lambda _, width=width: width):  # type: ignore[misc]
            marks.append(Words(pad, y + face.drop, line, face))
            y += face.leading
        y += GAP
    y = max(y, pad + side) if tag.blanks or tag.bars else y
    face = Face(REGULAR, ROW_PT * scale)
    for label in tag.blanks:
        y += BLANK * scale
        left = pad + width_of(label, face) + 2 * mm
        marks += [Words(pad, y, label, face), Rule(left, y, pad + inner, y, 0.5)]
    if tag.bars:
        y = _lay_bars(tag, plate, marks, pad, y, scale)
    return marks, y - (plate.height - pad)


def _side(tag: TagView, plate: Plate) -> float:
    return plate.symbol if tag.symbol or tag.has_flame else 0.0


def _beside(tag: TagView, plate: Plate, pad: float) -> Iterator[Mark]:
    """Yield what stands at the upper right: the symbol, or the flame."""
    size = plate.symbol
    left = plate.width - pad - size
    if tag.has_flame:
        yield from _flame(left, pad, size)
    elif tag.symbol:
        yield Symbol(left, pad + size, tag.symbol, size, dpi=plate.dpi)


def _lines(tag: TagView, room: float, scale: float) -> Iterator[tuple[str, Face]]:
    """Yield what is said, each with its face."""
    if tag.big:
        needed = width_of(tag.big, Face(BOLD, 1.0))
        yield tag.big, Face(BOLD, max(min(BIG_PT, room / needed) * scale, LEAST_BIG_PT), 1.05)
    yield tag.title, Face(BOLD, TITLE_PT * scale, 1.15)
    if tag.lot:
        yield f"Lot {tag.lot}", Face(BOLD, TITLE_PT * scale, 1.15)
    for label, value in tag.rows:
        yield f"{label} {value}", Face(MEDIUM, ROW_PT * scale, 1.2)
    for statement in tag.statements:
        yield statement, Face(REGULAR, ROW_PT * scale, 1.2)


def _lay_bars(
    tag: TagView, plate: Plate, marks: list[Mark], pad: float, y: float, scale: float
) -> float:
    """Put the bars at the foot, as high as there is room, and below them what they say.

    Returns:
        Where they end, which is below the margin where there is too little room.
    """
    face, least = Face(REGULAR, ROW_PT * scale, 1.2), BARS_HEIGHT * scale
    module = module_for(tag.bars, plate.width - 2 * GAP, plate.dpi)
    below = UNDER_BARS + face.leading if tag.under else 0.0
    y += ABOVE_BARS
    spare = max(plate.height - pad - below - y - least, 0.0)
    high = least + min(spare, MOST_BARS - least)
    low = y + max(spare + least, high)
    marks.append(Bars(GAP, low, tag.bars, module, high))
    if tag.under:
        marks.append(Words(GAP + QUIET * module, low + UNDER_BARS + face.drop, tag.under, face))
    return low + below


def _border(plate: Plate) -> Iterator[Mark]:
    """Yield thick diagonals all around, each inside the border and the label."""
    step, thick, wide, high = 2 * BORDER, BORDER, plate.width, plate.height
    for number in range(int(wide / step) + 1):
        x = number * step
        for y in (0.0, high - BORDER):
            over, low = x + BORDER, y + BORDER
            slant = ((x, low), (over, y), (over + thick, y), (x + thick, low))
            yield Patch(tuple((min(cx, wide), cy) for cx, cy in slant))
    for number in range(int((high - 3 * BORDER) / step) + 1):
        y = BORDER + number * step
        for x in (0.0, wide - BORDER):
            low = y + BORDER
            yield Patch(((x, low), (x + BORDER, y), (x + BORDER, y + thick), (x, low + thick)))


def _flame(left: float, top: float, size: float) -> Iterator[Mark]:
    """Yield a square standing on its corner with a flame over a line."""
    half, mid_x, mid_y = size / 2, left + size / 2, top + size / 2
    inside = half - 0.06 * size

    def diamond(reach: float) -> tuple[tuple[float, float], ...]:
        return (
            (mid_x, mid_y - reach),
            (mid_x + reach, mid_y),
            (mid_x, mid_y + reach),
            (mid_x - reach, mid_y),
        )

    yield Patch(diamond(half))
    yield Patch(diamond(inside), is_white=True)
    flame = ((-8, 14), (-13, 4), (-9, -4), (-7, 2), (-3, -16), (3, -6), (5, -10), (11, 2), (9, 14))
    unit = size / 60
    yield Patch(tuple((mid_x + dx * unit, mid_y + dy * unit) for dx, dy in flame))
    heart = ((-3, 14), (-5, 8), (-1, 1), (4, 8), (3, 14))
    yield Patch(tuple((mid_x + dx * unit, mid_y + dy * unit) for dx, dy in heart), is_white=True)
    below = mid_y + 17 * unit
    yield Rule(mid_x - 11 * unit, below, mid_x + 11 * unit, below, 2 * unit)
