"""Printing labels.

Guarantees: a sheet is drawn whole before its file is made; labels are recorded once their sheet
has been drawn; a file that is there stays unless asked.
"""

from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING

from cli.kit.answer import dossier_of, say, step_after
from cli.kit.call import Call
from cli.kit.files import once_recorded, paper_at
from ledger.errors import RefusedError
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.glass.serving import card
from ledger.service.goods.label import labels
from ledger.service.lots.dossier import dossier
from reports.views.goods import LabelSheetView
from reports.words.desk.answer import answer
from reports.words.goods.label import label_sheet_view

if TYPE_CHECKING:
    from reports.json.goods.label import LabelAnswer


def print_labels(
    book: Book,
    how: How,
    text: str,
    out: Path,
    count: int | None,
    *,
    fate: tuple[str | None, str | None] = (None, None),
    force: bool,
) -> Recorded:
    """Draw a sheet of labels, record it, and write it with the seal that includes the record."""
    if count is not None and not 1 <= count <= 10_000:
        raise RefusedError(
            f"{count} labels cannot be printed at once.", "Ask for 1 to 10000 labels."
        )
    found = dossier(book, text, how.by)
    served = card(book, found.state.code)
    sheet = label_sheet_view(found, count, served)
    used, spoiled = fate
    with paper_at(out, force=force) as paper:
        # Put whole before anything is recorded: a full disk or a name that cannot be drawn is told
        # while nothing is, and this sheet stands, under the older seal, should the next one fail.
        paper.put(_drawn(sheet))
        done = labels(
            book,
            how,
            lot=found.state.code,
            printed=str(sheet.count),
            used=used,
            spoiled=spoiled,
        )
        with once_recorded(
            f"Entry {done.seq} is recorded: {sheet.count} labels of {found.state.code} printed.",
            f"Strike it, and print again: pottle strike {done.seq}",
        ):
            paper.put(_drawn(label_sheet_view(dossier(book, found.state.code), count, served)))
    return done


def _drawn(view: LabelSheetView) -> bytes:
    from reports.pdf.goods.label import label_sheet

    sheet = BytesIO()
    label_sheet(view, sheet)
    return sheet.getvalue()


def say_labels(call: Call, book: Book, done: Recorded, out: Path | None) -> None:
    """Show what was recorded of labels, and where their sheet is."""
    found = dossier_of(book, done)
    step = step_after(book, done, found)
    said = answer(done, found, step)

    def plain() -> "LabelAnswer":
        from reports.json.goods.label import label_answer

        return label_answer(done, found, step, str(out) if out else None)

    paper = (f"The labels are in {out}.",) if out else ()
    say(call, plain, said.done, *paper, *said.found, *said.last)
