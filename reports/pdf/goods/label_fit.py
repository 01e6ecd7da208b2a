"""One bottle label, fitted to its size by breaking lines and then shrinking.

Guarantees: every word stands inside the padding, clear of the QR symbol and of every other word,
at the largest sizes that fit; what it declares besides is cut to its least, and named, rather than
refused. Refuses: a label whose other words do not fit even at their least sizes, rather than
cutting any of them off.
"""

from collections.abc import Callable, Sequence
from itertools import product
from typing import NamedTuple

from reportlab.lib.units import mm

from ledger.errors import RefusedError
from reports.pdf.goods.label_block import (
    LEAST_PRODUCT,
    Block,
    leasts_of,
    maker_blocks,
    shorter,
    upper_blocks,
    volume_face,
)
from reports.pdf.kit.fonts import BOLD
from reports.pdf.kit.marks import Across, Mark, Rule, Symbol, Words
from reports.pdf.kit.text import Face, widest_word, width_of, wrap
from reports.views.goods import LabelView

LABEL_WIDTH, LABEL_HEIGHT = 90 * mm, 44 * mm
"""A label between its cutting marks, in points."""

PADDING = 3 * mm
"""What stays blank inside the cut."""

INNER, ROOM = LABEL_WIDTH - 2 * PADDING, LABEL_HEIGHT - 2 * PADDING
"""Width and height for words."""

SYMBOL = 17 * mm
"""Side of the square for the QR symbol, at the upper right."""

ACROSS, ACROSS_ANGLE = Face(BOLD, 44.0), 20.0
"""Face and slope of a word across: SPECIMEN reaches from edge to edge."""

OVER = 1.5 * mm
"""How far the symbol's own quiet zone reaches into the padding."""

BESIDE = INNER - SYMBOL + OVER
"""Width for words beside the symbol; no word may be wider."""

VOLUME_ROOM = 0.6 * INNER
"""Width for the net volume, at the lower right."""

GAP = 0.4 * mm
"""Between two blocks of words."""

FOOT_GAP = 2 * mm
"""Between the upper part and the foot, with a rule in its middle."""

STEPS = 24
"""How many smaller sizes are tried."""

Laid = tuple[list[Words], float]
"""Lines of words, and the height they take in points."""


def _lay(blocks: Sequence[Block], shrink: float, width: Callable[[float], float]) -> Laid:
    """Set blocks one below the other; `width` gives the room for a line at a height."""
    lines: list[Words] = []
    y = 0.0
    for block in blocks:
        face = block.face(shrink, min(width(0), BESIDE))

        # Told as defaults, since a closure would see the values of the next block.
        def room(line: int, top: float = y, leading: float = face.leading) -> float:
            return width(top + line * leading)

        for text in wrap(block.text, face, room):
            lines.append(Words(PADDING, y + face.drop, text, face))
            y += face.leading
        y += GAP
    return lines, max(y - GAP, 0.0)


def _room_at(y: float) -> float:
    """Give the room for a line with its top at `y`, beside or below the symbol."""
    return BESIDE if y < SYMBOL - OVER else INNER


def _volume(label: LabelView) -> Laid:
    """Set the net volume flush right."""
    face = volume_face(label)
    texts = wrap(label.volume, face, lambda _: VOLUME_ROOM)
    lines = [
        Words(PADDING + INNER, line * face.leading + face.drop, text, face, "right")
        for line, text in enumerate(texts)
    ]
    return lines, len(lines) * face.leading


def _maker_width(label: LabelView) -> float:
    """Give the room for the maker's name and address."""
    lines, _ = _volume(label)
    return INNER - max(width_of(line.text, line.face) for line in lines) - 3 * mm


def _foot(label: LabelView, shrink: float, least: float) -> Laid:
    """Set maker and volume on one last baseline."""
    width = _maker_width(label)
    maker, high = _lay(maker_blocks(label, least), shrink, lambda _: width)
    volume, tall = _volume(label)
    if not maker:
        return volume, tall
    apart = volume[-1].y - maker[-1].y
    down, up = max(apart, 0.0), max(-apart, 0.0)
    lines = [_down(line, down) for line in maker] + [_down(line, up) for line in volume]
    return lines, max(high + down, tall + up)


def _down(line: Words, by: float) -> Words:
    """Move a line down."""
    return Words(line.x, line.y + by, line.text, line.face, line.align, line.struck)


def _too_wide(label: LabelView) -> list[str]:
    """Name in whole sentences the words that fit no line."""
    width, least = _maker_width(label), leasts_of(label)[-1]
    problems = [
        f"A word of the {block.name} is too wide even at {block.least:g} pt."
        for blocks, room in (
            (upper_blocks(label, least), BESIDE),
            (maker_blocks(label, least), width),
        )
        for block in blocks
        if block.largest_within(room) < block.least
    ]
    face = volume_face(label)
    if widest_word(label.volume, face) > VOLUME_ROOM:
        problems.append(f"A word of the net volume is too wide at {face.size:g} pt.")
    return problems


def _refuse(label: LabelView, why: str) -> RefusedError:
    """Make the error for a label that does not fit."""
    return RefusedError(
        f"The label of lot {label.lot} does not fit {LABEL_WIDTH / mm:.0f} by "
        f"{LABEL_HEIGHT / mm:.0f} mm. {why}",
        "Shorten its names and texts and print again.",
    )


class Fitted(NamedTuple):
    """A label as it was set."""

    marks: tuple[Mark, ...]
    """`y` is measured downwards from its upper cut, `x` from its left cut, in points."""
    left_out: tuple[str, ...]
    """Names of what had no room and was cut to its least."""


def fit_label(label: LabelView) -> Fitted:
    """Set a label, with as much of what it declares as has room.

    Args:
        label: What it says.

    Raises:
        RefusedError: Its words do not fit even at their least sizes, when it says the least.
    """
    *fuller, (least, left_out) = shorter(label)
    for told, cut in fuller:
        try:
            return Fitted(lay_label(told), cut)
        except RefusedError:
            continue
    return Fitted(lay_label(least), left_out)


def lay_label(label: LabelView) -> tuple[Mark, ...]:
    """Set a label with every one of its words.

    Args:
        label: What it says.

    Returns:
        Its marks; `y` is measured downwards from its upper cut, `x` from its left cut, in points.

    Raises:
        RefusedError: Its words do not fit even at their least sizes.
    """
    if problems := _too_wide(label):
        raise _refuse(label, " ".join(problems))
    needed, leasts = 0.0, leasts_of(label)
    for least, step in product(leasts, range(STEPS + 1)):
        shrink = 2 * step / STEPS
        foot, low = _foot(label, shrink, least)
        upper, high = _lay(upper_blocks(label, least), shrink, _room_at)
        needed = max(high, SYMBOL - OVER) + FOOT_GAP + low
        if needed <= ROOM:
            return _marks(label, upper, [_down(line, ROOM - low) for line in foot], ROOM - low)
    raise _refuse(
        label,
        f"At its least sizes, {LEAST_PRODUCT:g} pt for the product and {leasts[-1]:g} pt for "
        f"the rest, it needs {needed / mm:.1f} mm of height inside its margins and has "
        f"{ROOM / mm:.1f} mm.",
    )


def _marks(
    label: LabelView, upper: list[Words], foot: list[Words], foot_top: float
) -> tuple[Mark, ...]:
    """Put the parts together inside the padding."""
    y = foot_top - FOOT_GAP / 2
    rule = Rule(PADDING, PADDING + y, PADDING + INNER, PADDING + y, 0.4)
    left, below = LABEL_WIDTH - PADDING - SYMBOL + OVER, PADDING + SYMBOL - OVER
    symbol = Symbol(left, below, label.lot, SYMBOL)
    words = [_down(line, PADDING) for line in upper + foot]
    middle = (LABEL_WIDTH / 2, LABEL_HEIGHT / 2)
    over = (Across(*middle, label.across, ACROSS, ACROSS_ANGLE),) if label.across else ()
    return (*over, *words, symbol, rule)
