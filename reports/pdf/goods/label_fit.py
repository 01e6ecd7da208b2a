"""One bottle label, fitted to its size by breaking lines and then shrinking.

Guarantees: every word stands inside the padding, clear of the QR symbol and of every other word,
at the largest sizes that fit; what it declares besides, and need not in full, is cut to its least
and named. Refuses: a label whose other words do not fit even at their least sizes, rather than
cutting any of them off.
"""

from collections.abc import Callable, Sequence
from functools import partial
from typing import NamedTuple

from reportlab.lib.units import mm

from ledger.errors import RefusedError
from reports.pdf.goods.label_block import (
    Block,
    least_name,
    leasts_of,
    maker_blocks,
    shorter,
    upper_blocks,
    volume_face,
)
from reports.pdf.goods.layouts import Plate
from reports.pdf.kit.fonts import BOLD
from reports.pdf.kit.marks import Across, Mark, Rule, Symbol, Words
from reports.pdf.kit.text import Face, widest_word, width_of, wrap
from reports.views.goods import LabelView, Panel

USUAL_PLATE = Plate(90 * mm, 44 * mm)
"""The label that is taken where nothing else is said."""

ACROSS, ACROSS_ANGLE = Face(BOLD, 44.0), 20.0
"""Face and slope of a word across: SPECIMEN reaches from edge to edge."""

OVER = 1.5 * mm
"""How far the symbol's own quiet zone reaches into the padding."""

VOLUME_SHARE = 0.6
"""The part of the width that the net volume may take, at the lower right."""

GAP = 0.4 * mm
"""Between two blocks of words."""

FOOT_GAP = 2 * mm
"""Between the upper part and the foot, with a rule in its middle."""

STEPS = 36
"""How many smaller sizes are tried."""

Laid = tuple[list[Words], float]
"""Lines of words, and the height they take in points."""


def _symbol(label: LabelView, plate: Plate) -> float:
    """Return how far the symbol reaches into the padding; a front panel has none."""
    return 0.0 if label.panel is Panel.FRONT else plate.symbol - OVER


def _beside(label: LabelView, plate: Plate) -> float:
    """Return the width for words beside the symbol; no word may be wider."""
    return plate.inner - _symbol(label, plate)


def _lay(
    blocks: Sequence[Block],
    shrink: float,
    width: Callable[[float], float],
    left: float,
    most: float,
) -> Laid:
    """Set blocks one below the other; `width` gives the room for a line at a height."""
    lines: list[Words] = []
    y = 0.0
    for block in blocks:
        face = block.face(shrink, min(width(0), most))

        # Told as defaults, since a closure would see the values of the next block.
        def room(line: int, top: float = y, leading: float = face.leading) -> float:
            return width(top + line * leading)

        for text in wrap(block.text, face, room):
            lines.append(Words(left, y + face.drop, text, face))
            y += face.leading
        y += GAP
    return lines, max(y - GAP, 0.0)


def _volume(label: LabelView, plate: Plate) -> Laid:
    """Set the net volume flush right."""
    face = volume_face(label, plate)
    texts = wrap(label.volume, face, lambda _: VOLUME_SHARE * plate.inner)
    lines = [
        Words(plate.padding + plate.inner, line * face.leading + face.drop, text, face, "right")
        for line, text in enumerate(texts)
    ]
    return lines, len(lines) * face.leading


def _maker_width(label: LabelView, plate: Plate) -> float:
    """Give the room for the maker's name and address."""
    lines, _ = _volume(label, plate)
    return plate.inner - max(width_of(line.text, line.face) for line in lines) - 3 * mm


def _foot(label: LabelView, shrink: float, least: float, plate: Plate) -> Laid:
    """Set maker and volume on one last baseline; a back panel has neither."""
    if label.panel is Panel.BACK:
        return [], 0.0
    width = _maker_width(label, plate)
    blocks = maker_blocks(label, least)
    maker, high = _lay(blocks, shrink, lambda _: width, plate.padding, width)
    volume, tall = _volume(label, plate)
    if not maker:
        return volume, tall
    apart = volume[-1].y - maker[-1].y
    down, up = max(apart, 0.0), max(-apart, 0.0)
    lines = [_down(line, down) for line in maker] + [_down(line, up) for line in volume]
    return lines, max(high + down, tall + up)


def _down(line: Words, by: float) -> Words:
    """Move a line down."""
    return Words(line.x, line.y + by, line.text, line.face, line.align, line.struck)


def _too_wide(label: LabelView, plate: Plate) -> list[str]:
    """Name in whole sentences the words that fit no line."""
    width, least = _maker_width(label, plate), leasts_of(label)[-1]
    problems = [
        f"A word of the {block.name} is too wide even at {block.least:g} pt."
        for blocks, room in (
            (_upper(label, least, plate), _beside(label, plate)),
            (maker_blocks(label, least), width),
        )
        for block in blocks
        if block.largest_within(room) < block.least
    ]
    face = volume_face(label, plate)
    if widest_word(label.volume, face) > VOLUME_SHARE * plate.inner:
        problems.append(f"A word of the net volume is too wide at {face.size:g} pt.")
    return problems


class Fitted(NamedTuple):
    """A label as it was set."""

    marks: tuple[Mark, ...]
    """`y` is measured downwards from its upper cut, `x` from its left cut, in points."""
    left_out: tuple[str, ...]
    """Names of what had no room and was cut to its least."""


def fit_label(label: LabelView, plate: Plate = USUAL_PLATE) -> Fitted:
    """Set a label, with as much of what it declares as has room.

    Args:
        label: What it says.
        plate: What it is printed on.

    Raises:
        RefusedError: Its words do not fit even at their least sizes, when it says the least.
    """
    *fuller, (least, left_out) = shorter(label)
    for told, cut in fuller:
        try:
            return Fitted(lay_label(told, plate), cut)
        except RefusedError:
            continue
    return Fitted(lay_label(least, plate), left_out)


def holds(plate: Plate, label: LabelView) -> bool:
    """Say whether a label fits."""
    try:
        fit_label(label, plate)
    except RefusedError:
        return False
    return True


def lay_label(label: LabelView, plate: Plate = USUAL_PLATE) -> tuple[Mark, ...]:
    """Set a label with every one of its words.

    Args:
        label: What it says.
        plate: What it is printed on.

    Returns:
        Its marks; `y` is measured downwards from its upper cut, `x` from its left cut, in points.

    Raises:
        RefusedError: Its words do not fit even at their least sizes.
    """
    if problems := _too_wide(label, plate):
        raise _refuse(label, plate, " ".join(problems))
    beside, symbol = _beside(label, plate), _symbol(label, plate)

    def room_at(y: float) -> float:
        """Give the room for a line with its top at `y`, beside or below the symbol."""
        return beside if y < symbol else plate.inner

    def laid(step: int, least: float) -> _Laying:
        shrink = 3 * step / STEPS
        foot, low = _foot(label, shrink, least, plate)
        blocks = _upper(label, least, plate)
        upper, high = _lay(blocks, shrink, room_at, plate.padding, beside)
        above = max(high, symbol) + (FOOT_GAP if foot else 0.0)
        return _Laying(upper, foot, low, above + low)

    leasts = leasts_of(label)
    for least in leasts:
        smallest = laid(STEPS, least)
        if smallest.needed <= plate.room:
            best = _largest(partial(laid, least=least), smallest, plate.room)
            lowered = [_down(line, plate.room - best.low) for line in best.foot]
            return _marks(label, plate, best.upper, lowered, plate.room - best.low)
    lacks = laid(STEPS, leasts[-1]).needed - plate.room
    tallest = _tallest(_upper(label, leasts[-1], plate), 3.0, room_at, beside)
    raise _refuse(
        label,
        plate,
        f"At its least sizes, {_name_least(label, leasts[-1], plate):g} pt for the product and "
        f"{leasts[-1]:g} pt for the rest, it lacks {lacks / mm:.1f} mm of height; what "
        f"takes most of it: {tallest}.",
    )


def _upper(label: LabelView, least: float, plate: Plate) -> list[Block]:
    return upper_blocks(label, least, least_name(label, plate))


def _name_least(label: LabelView, least: float, plate: Plate) -> float:
    """Return the least size in points of the product's name, where all else has `least`."""
    return next(block.least for block in _upper(label, least, plate) if block.name == "product")


class _Laying(NamedTuple):
    """A label laid out at some size."""

    upper: list[Words]
    """Lines beside and below the symbol."""
    foot: list[Words]
    """Lines of maker and volume."""
    low: float
    """Height of the foot, in points."""
    needed: float
    """Height of all of it."""


def _largest(laid: Callable[[int], _Laying], smallest: _Laying, room: float) -> _Laying:
    """Return a label at the largest size at which it has room, given that the smallest has it.

    The steps are halved: what is smaller needs no more room.
    """
    best, low, high = smallest, 0, STEPS
    while low < high:
        middle = (low + high) // 2
        tried = laid(middle)
        if tried.needed <= room:
            best, high = tried, middle
        else:
            low = middle + 1
    return best


def _tallest(
    blocks: Sequence[Block], shrink: float, room: Callable[[float], float], most: float
) -> str:
    """Return the name of what takes most height."""
    return max(blocks, key=lambda block: _lay([block], shrink, room, 0.0, most)[1]).name


def _refuse(label: LabelView, plate: Plate, why: str) -> RefusedError:
    """Make the error for a label that does not fit."""
    part = "" if label.panel is Panel.WHOLE else f"{label.panel} of the "
    return RefusedError(
        f"The {part}label of lot {label.lot} does not fit {plate.size}. {why}",
        "Or shorten the names and texts that you typed, and print again.",
    )


def _marks(
    label: LabelView, plate: Plate, upper: list[Words], foot: list[Words], foot_top: float
) -> tuple[Mark, ...]:
    """Put the parts together inside the padding."""
    pad, y = plate.padding, foot_top - FOOT_GAP / 2
    rule = (Rule(pad, pad + y, pad + plate.inner, pad + y, 0.5),) if foot else ()
    left, below = plate.width - pad - plate.symbol + OVER, pad + plate.symbol - OVER
    said = label.symbol or label.lot
    has_symbol = label.panel is not Panel.FRONT
    symbol = (Symbol(left, below, said, plate.symbol, dpi=plate.dpi),) if has_symbol else ()
    words = [_down(line, pad) for line in upper + foot]
    middle = (plate.width / 2, plate.height / 2)
    face = Face(BOLD, ACROSS.size * plate.width / USUAL_PLATE.width)
    over = (Across(*middle, label.across, face, ACROSS_ANGLE),) if label.across else ()
    return (*over, *words, *symbol, *rule)
