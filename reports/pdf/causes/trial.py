"""The sheet of a planned trial, on paper: a part to make the jars by, and one to look by.

Guarantees: the two parts are on pages of their own, so that who looks need not see what is in the
jars; every jar has a blank for each age.
"""

from collections.abc import Sequence
from typing import BinaryIO

from reportlab.lib.units import mm

from reports.kit.frame import Heading
from reports.pdf.kit.head import paper_head
from reports.pdf.kit.marks import Mark, Rule, Words
from reports.pdf.kit.page import INNER, SIDE, SIZES, WIDTH, write_paper
from reports.pdf.kit.rows import Column, Piece, paragraphs, table, title_strip
from reports.pdf.kit.strips import Section, Strip
from reports.pdf.kit.styles import COLUMN, GUTTER, RULE, SECTION, SMALL, VALUE
from reports.views.causes import EveningRows, TrialSheetView

HIGHEST, LOWEST = 12 * mm, 8 * mm
"""Height of a row to write in: with few jars and with many."""
ABOVE = 60 * mm
"""Room for the head of the page."""
FIRST = 28 * mm
"""Width for the mark of a jar."""
BLANKS = ("day, time", "grade", "NTU", "words", "by")
"""What is written down of one look."""
SHARES = (1.5, 1.3, 0.8, 1.6, 0.6)
"""How wide the blanks are, against each other."""
NARROW = 1.5 * mm
"""Between two blanks."""


def trial_sheet(view: TrialSheetView, out: BinaryIO) -> None:
    """Write the sheet of a planned trial as PDF.

    Args:
        view: What it says.
        out: Where the bytes go; untouched if anything is refused.

    Raises:
        RefusedError: A name is too long for a page.
    """
    making = [
        paper_head(view.frame, Heading("Planned trial: to make the jars by", view.name)),
        paragraphs(view.lines),
        *(_evening(view, evening) for evening in view.evenings),
    ]
    looking = [
        paper_head(view.frame, Heading("Planned trial: to look by, without knowing", view.name)),
        paragraphs((f"Look at all jars in one light, in this order. {view.how_to_type}",)),
        _blanks(view),
    ]
    write_paper(out, view.frame, Heading("Trial", view.name), making, looking)


def _evening(view: TrialSheetView, evening: EveningRows) -> Section:
    room = (INNER + GUTTER - (14 + 24 + 40) * mm) / len(view.heads)
    columns = (
        Column("Jar", 14 * mm),
        Column("Mark", 24 * mm),
        *(Column(head, room) for head in view.heads),
        Column("Made at, by", 40 * mm),
    )
    rows = [
        [
            (Piece(jar.number),),
            (Piece(jar.mark, VALUE),),
            *((Piece(level),) for level in jar.levels),
            (Piece(""),),
        ]
        for jar in evening.jars
    ]
    return table(evening.title, columns, rows)


def _blanks(view: TrialSheetView) -> Section:
    room = (INNER - FIRST) / len(view.ages)
    lefts = [SIDE + FIRST + room * place for place in range(len(view.ages))]
    heads = title_strip("Looks")
    marks: list[Mark] = [*heads.marks, Words(SIDE, heads.height + COLUMN.drop, "Mark", COLUMN)]
    marks += [
        Words(left, heads.height + COLUMN.drop, f"After {age}", COLUMN)
        for left, age in zip(lefts, view.ages, strict=True)
    ]
    head = Strip(heads.height + COLUMN.leading, tuple(marks))
    height = max(LOWEST, min(HIGHEST, (SIZES[view.frame.size].body - ABOVE) / len(view.marks)))
    rows = tuple(_blank_row(text, lefts, room, height) for text in view.marks)
    return Section(head, head, rows)


def _blank_row(text: str, lefts: Sequence[float], room: float, height: float) -> Strip:
    base = height - SMALL.leading - 0.5 * mm
    marks: list[Mark] = [Words(SIDE, 1 * mm + SECTION.drop, text, SECTION)]
    for left in lefts:
        x = left
        width = room - NARROW * len(BLANKS) - 1 * mm
        for label, share in zip(BLANKS, SHARES, strict=True):
            part = width * share / sum(SHARES)
            marks.append(Rule(x, base, x + part, base, RULE))
            marks.append(Words(x, base + SMALL.drop * 0.9, label, SMALL))
            x += part + NARROW
    marks.append(Rule(SIDE, height, WIDTH - SIDE, height, RULE))
    return Strip(height, tuple(marks))
