"""Printing labels.

Guarantees: a sheet is drawn whole before its file is made; labels are recorded once their sheet
has been drawn; a file that is there stays unless asked.
"""

from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from cli.kit.answer import dossier_of, say, step_after
from cli.kit.call import Call
from cli.kit.files import once_recorded, paper_at
from ledger.domain.entries import Labels
from ledger.domain.entries.choices import Across
from ledger.domain.lots.labels import across
from ledger.errors import RefusedError
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.glass.serving import card
from ledger.service.goods.label import labels
from ledger.service.lots.dossier import dossier
from reports.views.goods import LabelSheetView
from reports.words.desk.answer import answer
from reports.words.goods.label import across_each, label_sheet_view

if TYPE_CHECKING:
    from reports.json.goods.label import LabelAnswer


class Fate(NamedTuple):
    """What became of labels, and what they were printed on; all as a person writes it."""

    used: str | None = None
    """How many went on bottles."""
    spoiled: str | None = None
    """How many were spoiled and destroyed."""
    stock: str | None = None
    """The lot of blank labels."""


NO_FATE = Fate()
"""Nothing was said of it."""


def print_labels(
    book: Book,
    how: How,
    text: str,
    out: Path,
    count: int | None,
    *,
    fate: Fate = NO_FATE,
    specimen: bool = False,
    force: bool,
) -> Recorded[Labels]:
    """Draw a sheet of labels, record it, and write it with the seal that includes the record."""
    if count is not None and not 1 <= count <= 10_000:
        raise RefusedError(
            f"{count} labels cannot be printed at once.", "Ask for 1 to 10000 labels."
        )
    found, count = dossier(book, text, how.by), count or (1 if specimen else None)
    served = card(book, found.state.code)
    word = Across.SPECIMEN if specimen else across(found.state, book.clock().date())
    sheet = across_each(label_sheet_view(found, count, served), word)
    with paper_at(out, force=force) as paper:
        # Put whole before anything is recorded: a full disk or a name that cannot be drawn is told
        # while nothing is, and this sheet stands, under the older seal, should the next one fail.
        paper.put(_drawn(sheet))
        done = labels(
            book,
            how,
            lot=found.state.code,
            printed=str(sheet.count),
            used=fate.used,
            spoiled=fate.spoiled,
            stock=fate.stock,
            specimen="yes" if specimen else None,
        )
        with once_recorded(
            f"Entry {done.seq} is recorded: {sheet.count} labels of {found.state.code} printed.",
            f"Strike it, and print again: pottle strike {done.seq}",
        ):
            again = label_sheet_view(dossier(book, found.state.code), count, served)
            paper.put(_drawn(across_each(again, done.entry.facts.across)))
    return done


def _drawn(view: LabelSheetView) -> bytes:
    from reports.pdf.goods.label import label_sheet

    sheet = BytesIO()
    label_sheet(view, sheet)
    return sheet.getvalue()


def say_labels(call: Call, book: Book, done: Recorded[Labels], out: Path | None) -> None:
    """Show what was recorded of labels, and where their sheet is."""
    found = dossier_of(book, done)
    step = step_after(book, done, found)
    said = answer(done, found, step)

    def plain() -> "LabelAnswer":
        from reports.json.goods.label import label_answer

        return label_answer(done, found, step, str(out) if out else None)

    word = done.entry.facts.across
    on_each = f", each with {word} across" if word else ""
    paper = (f"The labels are in {out}{on_each}.",) if out else ()
    say(call, plain, said.done, *paper, *said.found, *said.last)
