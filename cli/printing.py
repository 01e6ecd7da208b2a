"""Writing papers to files.

Guarantees: a paper is drawn whole before its file is made; a file that is there stays unless asked;
labels are recorded once their sheet has been drawn. Refuses: folders that do not exist.
"""

from io import BytesIO
from pathlib import Path

from ledger.errors import RefusedError, StorageError
from ledger.service.book import Book, How, Recorded
from ledger.service.looking import dossier, find_lot, now_at_home
from ledger.service.selling import labels
from reports.build.papers import label_sheet_view, record_view
from reports.pdf.labels import label_sheet
from reports.pdf.record import batch_record

OTHER_NAME = "Give another name with --out, or --force to write over it."


def print_labels(
    book: Book, how: How, text: str, out: Path, count: int | None, *, force: bool
) -> Recorded:
    """Draw a sheet of labels, record it, and write it with the seal that includes the record."""
    check_place(out, force=force)
    if count is not None and not 1 <= count <= 10_000:
        raise RefusedError(
            f"{count} labels cannot be printed at once.", "Ask for 1 to 10000 labels."
        )
    found = dossier(book, text, how.by)
    sheet = label_sheet_view(found, count)
    label_sheet(sheet, BytesIO())
    done = labels(book, how, lot=found.state.code, printed=str(sheet.count))
    paper = BytesIO()
    label_sheet(label_sheet_view(dossier(book, found.state.code), count), paper)
    write(out, paper.getvalue())
    return done


def print_record(book: Book, text: str, out: Path, *, by: str | None, force: bool) -> str:
    """Write the batch record of a lot and return the lot's code."""
    check_place(out, force=force)
    code = find_lot(book, text, by)
    paper = BytesIO()
    batch_record(record_view(dossier(book, code), now_at_home(book)), paper)
    write(out, paper.getvalue())
    return code


def check_place(out: Path, *, force: bool, instead: str = OTHER_NAME) -> None:
    """Make sure a file may be written; `instead` is what to do when it is there already.

    Raises:
        StorageError: Its folder is missing, or it is there already.
    """
    if not out.parent.is_dir():
        raise StorageError(
            f"There is no folder {out.parent}.", "Make it first, or give another place with --out."
        )
    if out.exists() and not force:
        raise StorageError(
            f"There is a file {out} already; it was left as it is.",
            instead,
        )


def write(out: Path, paper: bytes) -> None:
    """Write a paper to its file.

    Raises:
        StorageError: The file cannot be written.
    """
    try:
        out.write_bytes(paper)
    except OSError as error:
        raise StorageError(
            f"The file {out} could not be written: {error.strerror}.",
            "Choose a place that you may write in.",
        ) from error
