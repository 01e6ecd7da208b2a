"""Writing papers to files.

Guarantees: a paper is drawn whole before its file is made; a file that is there stays unless asked;
labels are recorded once their sheet has been drawn. Refuses: folders that do not exist.
"""

from io import BytesIO
from pathlib import Path

from cli.kit.files import check_place, write
from ledger.errors import RefusedError
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.glass.serving import card
from ledger.service.goods.bottle import labels
from ledger.service.lots.dossier import Dossier, dossier, now_at_home
from reports.pdf.goods.label import label_sheet
from reports.pdf.lots.record import batch_record
from reports.words.lots.record import label_sheet_view, record_view


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
    check_place(out, force=force)
    if count is not None and not 1 <= count <= 10_000:
        raise RefusedError(
            f"{count} labels cannot be printed at once.", "Ask for 1 to 10000 labels."
        )
    found = dossier(book, text, how.by)
    served = card(book, found.state.code)
    sheet = label_sheet_view(found, count, served)
    label_sheet(sheet, BytesIO())
    used, spoiled = fate
    done = labels(
        book,
        how,
        lot=found.state.code,
        printed=str(sheet.count),
        used=used,
        spoiled=spoiled,
    )
    paper = BytesIO()
    label_sheet(label_sheet_view(dossier(book, found.state.code), count, served), paper)
    write(out, paper.getvalue())
    return done


def print_record(book: Book, text: str, out: Path, *, by: str | None, force: bool) -> Dossier:
    """Write the batch record of a lot and return all that is known of the lot."""
    check_place(out, force=force)
    found = dossier(book, text, by)
    paper = BytesIO()
    batch_record(record_view(found, now_at_home(book), card(book, found.state.code)), paper)
    write(out, paper.getvalue())
    return found
