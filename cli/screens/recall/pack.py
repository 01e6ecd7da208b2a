"""Writing the papers and tables of a recall into a folder.

Guarantees: all is drawn before the first file is made, and stands whole aside before the first has
its name; they are private to their owner; files that are there stay unless asked. Refuses: a place
that is no folder.
"""

from collections.abc import Mapping
from contextlib import ExitStack
from io import BytesIO
from pathlib import Path

from cli.kit.files import check_place, make_folder, paper_at
from ledger.errors import StorageError
from ledger.service.desk.book import Book
from ledger.service.desk.clock import written_at
from ledger.service.recall.trail import trail_of
from reports.kit.tables import csv_text
from reports.words.recall.key_data import key_data
from reports.words.recall.pack import recall_view
from reports.words.recall.tables import recall_sheets

PACK = "recall.pdf"
"""Name of the paper."""
TABLES = ("receiving", "transformation", "shipping", "lots", "balance", "calls", "contacts")
"""Names of the tables."""
OTHER_FOLDER = "Give another folder with --out, or --force to write over them."


def check_folder(out: Path, *, force: bool) -> None:
    """Make sure that the folder of a recall's files can be made or is free.

    Raises:
        StorageError: It is a file, its own folder is missing, or its files are there already.
    """
    if out.exists() and not out.is_dir():
        raise StorageError(f"{out} is a file, not a folder.", "Give another folder with --out.")
    if not out.parent.is_dir():
        raise StorageError(
            f"There is no folder {out.parent}.", "Make it first, or give another with --out."
        )
    if out.is_dir():
        for name in (PACK, *(f"{table}.csv" for table in TABLES)):
            check_place(out / name, force=force, instead=OTHER_FOLDER)


def drawn_pack(book: Book, code: str, *, drill: bool) -> dict[str, bytes]:
    """Return the paper and the tables of a recall as it stands, by the names of their files."""
    from reports.pdf.recall.pack import recall_pack

    trail = trail_of(book, code)
    keys = key_data(trail)
    missing = [sentence for table in keys for sentence in table.missing]
    paper = BytesIO()
    recall_pack(recall_view(trail.recall, missing, written_at(book), drill=drill), paper)
    sheets = {table.name: table.sheet for table in keys} | recall_sheets(trail.recall)
    tables = {f"{name}.csv": csv_text(sheets[name]).encode() for name in TABLES}
    return {PACK: paper.getvalue(), **tables}


def write_pack(files: Mapping[str, bytes], out: Path, *, force: bool) -> list[Path]:
    """Write the files of a recall and return their places; telephone numbers are in them.

    Raises:
        StorageError: The folder or a file cannot be written.
    """
    make_folder(out, is_private=True)
    with ExitStack() as whole:
        for name, content in files.items():
            place = paper_at(out / name, force=force, instead=OTHER_FOLDER, is_private=True)
            whole.enter_context(place).put(content)
    return [out / name for name in files]
