"""The pack of a recall on paper: when to ask the authority, the script, the call list, the balance.

Guarantees: everybody to call has boxes to tick and lines to write on; a call stands whole on one
page; the seal is at the foot.
"""

from collections.abc import Iterable, Sequence
from typing import BinaryIO

from reportlab.lib.units import mm

from reports.kit.frame import Heading
from reports.pdf.kit.fonts import BOLD
from reports.pdf.kit.head import paper_head, sentences
from reports.pdf.kit.marks import Mark, Rule, Words
from reports.pdf.kit.page import INNER, SIDE, WIDTH, write_paper
from reports.pdf.kit.rows import Cell, Column, Piece, table, title_strip
from reports.pdf.kit.strips import Section, Strip, stacked
from reports.pdf.kit.styles import CELL, GUTTER, RULE, SECTION, TITLE, VALUE
from reports.pdf.kit.text import Face, width_of, wrap
from reports.views.recall import CallView, RecallView

NAME = SECTION
"""Who to call."""
PHONE = Face(BOLD, 16, 1.1)
"""Their number: dialled from the paper, at arm's length."""
REACH = VALUE
"""How to reach them besides."""
TELL = CELL
"""What they were sent."""
TICK = CELL
"""Words beside a box."""
SCRIPT = TITLE
"""What is read aloud."""
DRILL = "DRILL"
"""Stands across every page of a drill, so that nobody takes it for the real thing."""
NOBODY = "Nobody was sent any."
"""Said when there is nobody to call."""
BOX = 3.6 * mm
"""Side of a box to tick."""
LOT_COLUMNS = (
    Column("Lot", 38 * mm),
    Column("What", 75 * mm),
    Column("Here", 30 * mm, "right"),
    Column("Status", 40 * mm),
)
"""The table of lots."""
CONTACT_COLUMNS = (
    Column("When", 33 * mm),
    Column("By", 14 * mm),
    Column("Who", 58 * mm),
    Column("What was said", 78 * mm),
)
"""The table of calls made."""


def recall_pack(view: RecallView, out: BinaryIO) -> None:
    """Write the pack of a recall as PDF.

    Args:
        view: What it says.
        out: Where the bytes go; untouched if anything is refused.
    """
    write_paper(out, view.frame, heading_of(view), _sections(view))


def heading_of(view: RecallView) -> Heading:
    """Return what the pack is."""
    across = DRILL if view.is_drill else ""
    return Heading("Recall", view.lot, view.product, view.kind, across=across)


def _sections(view: RecallView) -> list[Section]:
    """Lay out all that the pack says, in order."""
    return [
        paper_head(view.frame, Heading(view.headline, view.product, f"{view.lot}: {view.title}")),
        *sentences(view.course),
        *_titled("If somebody may be harmed", view.authority),
        *_titled("What to say", view.script, SCRIPT),
        *_under(
            "Whom to call, in this order",
            [_call(call, view.ticks) for call in view.calls] or sentences([NOBODY]),
        ),
        _together("Where all of it is", view.balance_sums),
        _balance(view),
        table("Lots", LOT_COLUMNS, (_plain(row) for row in view.lots)),
        table("Calls made", CONTACT_COLUMNS, (_plain(row) for row in view.contacts)),
        *_titled(
            "What the files beside this paper lack",
            view.missing or ("Nothing that the book is asked for.",),
            TELL,
        ),
    ]


def _titled(title: str, texts: Sequence[str], face: Face | None = None) -> list[Section]:
    """Lay out sentences under a head that never stands alone."""
    return _under(title, sentences(texts, face) if face else sentences(texts))


def _under(title: str, parts: Sequence[Section]) -> list[Section]:
    """Put a head over parts, on the same page as the first."""
    first, *others = parts
    return [Section(title_strip(title), Strip(0), (first.head,)), *others]


def _together(title: str, texts: Sequence[str]) -> Section:
    """Lay out sentences under a head, all on one page."""
    told = (part.head for part in sentences(texts))
    return Section(stacked([title_strip(title), *told]), Strip(0))


def _plain(row: Iterable[str]) -> list[Cell]:
    return [(Piece(text, VALUE if place == 0 else CELL),) for place, text in enumerate(row)]


def _balance(view: RecallView) -> Section:
    """Lay out where all of each lot is, the figures in columns of equal width."""
    first = 30 * mm
    each = (INNER + GUTTER - first) / max(len(view.balance_heads) - 1, 1)
    columns = [
        Column(head.capitalize(), first if place == 0 else each, "left" if place == 0 else "right")
        for place, head in enumerate(view.balance_heads)
    ]
    return table("By lot", columns, (_plain(row) for row in view.balance))


def _call(call: CallView, ticks: Sequence[str]) -> Section:
    """Lay out one call: who, how, what, boxes, lines to write on."""
    marks: list[Mark] = []
    y = 2.5 * mm
    number = f"{call.place}."
    left = SIDE + 9 * mm
    marks.append(Words(SIDE, y + NAME.drop, number, NAME))
    marks.append(Words(WIDTH - SIDE, y + PHONE.drop, call.phone, PHONE, "right"))
    beside = width_of(call.phone, PHONE) + GUTTER if call.phone else 0.0
    lines = [(call.name, NAME), *((text, REACH) for text in call.reach), (call.may_have, REACH)]
    lines += [(text, TELL) for text in (*call.sent, *call.called)]
    for text, face in lines:
        for line in wrap(text, face, lambda _: INNER - 9 * mm - beside):
            marks.append(Words(left, y + face.drop, line, face))
            y += face.leading
    y += 2 * mm
    marks += _ticks(ticks, left, y)
    y += BOX + 5.5 * mm
    for label, start, end in (
        ("When, by", left, left + 48 * mm),
        ("Still there", left + 53 * mm, left + 85 * mm),
        ("Spoke with, what was said", left + 90 * mm, WIDTH - SIDE),
    ):
        marks.append(Words(start, y, label, CELL))
        marks.append(Rule(start + width_of(label, CELL) + 1.5 * mm, y, end, y, RULE))
    y += 3 * mm
    marks.append(Rule(SIDE, y, WIDTH - SIDE, y, RULE))
    return Section(Strip(y, tuple(marks)), Strip(0))


def _ticks(ticks: Sequence[str], left: float, y: float) -> list[Mark]:
    """Draw boxes with their words in a row."""
    marks: list[Mark] = []
    for text in ticks:
        marks += _box(left, y)
        marks.append(Words(left + BOX + 1.5 * mm, y + BOX - 0.7 * mm, text, TICK))
        left += BOX + 1.5 * mm + width_of(text, TICK) + 6 * mm
    return marks


def _box(x: float, y: float) -> list[Rule]:
    """Draw an empty square."""
    right, below = x + BOX, y + BOX
    return [
        Rule(x, y, right, y, RULE),
        Rule(right, y, right, below, RULE),
        Rule(right, below, x, below, RULE),
        Rule(x, below, x, y, RULE),
    ]
