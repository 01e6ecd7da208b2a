"""Lines of text: how wide they are, where they break, how they are put on paper.

Guarantees: the lines of a text hold all its words, none wider than asked for; text is drawn as it
stands, since nothing in it is read as markup; a character that the face has no shape for is drawn
as its number in a box, and noted; a number and its unit stand on one line.
"""

import unicodedata
from collections.abc import Callable, Iterator
from functools import lru_cache
from typing import Literal

from msgspec import Struct
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from reports.kit.boxed import note_boxed, number_of
from reports.kit.held import NO_BREAK, held
from reports.pdf.kit.fonts import printable, register

Align = Literal["left", "right"]
"""Which edge the lines of a column share."""

BREAKS = "-/_.,;:+"
"""A word too long for a line breaks after one of these if it can."""

CAP_HEIGHT = 0.689
"""Height of capitals and figures over the size of the face."""

BOX_SIZE = 0.6
"""Size of the number in a box over the size of the face around it."""

BOX_MARGIN = 0.12
"""White around and beside that number over the size of the face."""


class Face(Struct, frozen=True):
    """A font at a size in points."""

    font: str
    """One of `reports.pdf.kit.fonts.FACES`."""
    size: float
    """Points."""
    spacing: float = 1.25
    """Leading over size."""

    @property
    def leading(self) -> float:
        """From line to line, in points."""
        return self.size * self.spacing

    @property
    def drop(self) -> float:
        """From the top of a line to its baseline, in points; capitals sit in the middle."""
        return (self.leading + CAP_HEIGHT * self.size) / 2


@lru_cache(maxsize=8192)  # what is fitted is measured again at every try
def width_of(text: str, face: Face) -> float:
    """Measure a line in points."""
    register()
    if printable(face.font).issuperset(text):
        return pdfmetrics.stringWidth(text, face.font, face.size)
    return sum(_width_of_run(run, face) for run in _runs(text, face.font))


def _runs(text: str, font: str) -> Iterator[str]:
    """Split a line into stretches that a font shows and single characters that it does not."""
    start = 0
    for at, char in enumerate(text):
        if char not in printable(font):
            if at > start:
                yield text[start:at]
            yield char
            start = at + 1
    if start < len(text):
        yield text[start:]


def _is_boxed(run: str, font: str) -> bool:
    return run not in printable(font) and len(run) == 1


def _width_of_run(run: str, face: Face) -> float:
    if not _is_boxed(run, face.font):
        return pdfmetrics.stringWidth(run, face.font, face.size)
    number = pdfmetrics.stringWidth(number_of(run), face.font, BOX_SIZE * face.size)
    return number + 2 * BOX_MARGIN * face.size


def words_of(text: str) -> list[str]:
    """Split a text at its spaces and line ends; a no-break space holds words together."""
    return [word for line in text.splitlines() for word in line.split(" ") if word]


def widest_word(text: str, face: Face) -> float:
    """Measure the widest word of a text in points; 0 if there is none."""
    return max((width_of(word, face) for word in words_of(text)), default=0.0)


def _head_of(word: str, face: Face, width: float) -> int:
    """Count how many characters of a too long word go on this line; at least one."""
    room = 1
    while room < len(word) and width_of(word[: room + 1], face) <= width:
        room += 1
    after = max(word.rfind(mark, 0, room) for mark in BREAKS) + 1
    return after or room


def _pieces(word: str, face: Face, width: float) -> Iterator[str]:
    """Break a word into parts that each fit a line."""
    while width_of(word, face) > width and len(word) > 1:
        cut = _head_of(word, face, width)
        yield word[:cut]
        word = word[cut:]
    yield word


def _wrap_line(text: str, face: Face, width: Callable[[int], float], first: int) -> list[str]:
    """Break one line of a text; `first` is the number of its first line on paper."""
    lines: list[str] = []
    line = ""
    for word in words_of(text):
        longer = f"{line} {word}" if line else word
        if width_of(longer, face) <= width(first + len(lines)):
            line = longer
            continue
        if line:
            lines.append(line)
        *full, line = _pieces(word, face, width(first + len(lines)))
        lines += full
    return [*lines, line]


def wrap(text: str, face: Face, width: Callable[[int], float]) -> list[str]:
    """Break a text into lines.

    Args:
        text: Any text; its own line ends are kept.
        face: The face it is printed in.
        width: The room in points for each line by its number, counted from 0.

    Returns:
        The lines; one empty line for an empty text.

    Example:
        >>> from reports.pdf.kit.fonts import REGULAR
        >>> wrap("lemon peel, orange peel", Face(REGULAR, 8), lambda line: 60)
        ['lemon peel,', 'orange peel']
    """
    lines: list[str] = []
    text = held(text)
    # An accent that was typed apart is put on its letter, for which the face has a shape.
    for part in unicodedata.normalize("NFC", text).splitlines() or [""]:
        lines += _wrap_line(part, face, width, len(lines))
    # Once lines are broken a no-break space has done its work, and words are looked for without.
    return [line.replace(NO_BREAK, " ") for line in lines]


def fitting(text: str, face: Face, width: float) -> str:
    """Return a text as far as it fits a width in points, with an ellipsis where it was longer."""
    if width_of(text, face) <= width:
        return text
    kept = len(text)
    while kept and width_of(f"{text[:kept].rstrip()}…", face) > width:
        kept -= 1
    return f"{text[:kept].rstrip()}…" if kept else ""


def draw_text(canvas: Canvas, x: float, y: float, text: str, face: Face, align: Align) -> None:
    """Draw one line with its baseline at `y`, all in points."""
    x -= width_of(text, face) if align == "right" else 0.0
    for run in _runs(text, face.font):
        if _is_boxed(run, face.font):
            _draw_box(canvas, x, y, run, face)
        else:
            canvas.setFont(face.font, face.size)
            canvas.drawString(x, y, run)
        x += _width_of_run(run, face)


def _draw_box(canvas: Canvas, x: float, y: float, char: str, face: Face) -> None:
    note_boxed(char)
    margin, size = BOX_MARGIN * face.size, BOX_SIZE * face.size
    canvas.setFont(face.font, size)
    canvas.drawString(x + margin, y + margin, number_of(char))
    canvas.setLineWidth(0.05 * face.size)
    width = _width_of_run(char, face) - margin
    canvas.rect(x + margin / 2, y, width, CAP_HEIGHT * size + 2 * margin)


def strike(canvas: Canvas, x: float, y: float, width: float, size: float) -> None:
    """Draw a line through the middle of the small letters of a text, thin enough to read it."""
    canvas.setLineWidth(0.06 * size)
    canvas.line(x, y + 0.26 * size, x + width, y + 0.26 * size)
