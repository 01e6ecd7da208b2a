"""Printing the record of a lot.

Guarantees: it is drawn whole before its file is made; a file that is there stays unless asked.
"""

from pathlib import Path

from cli.kit.files import check_place, draw
from ledger.domain.entries.choices import LotType
from ledger.service.desk.book import Book
from ledger.service.glass.serving import card
from ledger.service.lots.around import around
from ledger.service.lots.dossier import Dossier, dossier
from reports.pdf.lots.record import batch_record
from reports.views.lots import RecordView
from reports.words.goods.label import specimen_of
from reports.words.lots.record import record_view


def print_record(book: Book, text: str, out: Path, *, by: str | None, force: bool) -> Dossier:
    """Write the batch record of a lot and return all that is known of the lot."""
    check_place(out, force=force)
    found = dossier(book, text, by)
    view = view_of(book, found)
    draw(out, lambda paper: batch_record(view, paper), force=force)
    return found


def view_of(book: Book, found: Dossier) -> RecordView:
    """Return what the record of a lot shows."""
    served = card(book, found.state.code)
    is_packed = found.state.opened.lot_type is LotType.PACKED
    specimen = specimen_of(found, served) if is_packed else None
    return record_view(found, served, around(book, found.state), specimen)
