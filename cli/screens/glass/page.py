"""Writing the pages of lots.

Guarantees: each is written whole under its name, and renewed as the book stands; nothing else in
the folder is touched.
"""

from pathlib import Path
from typing import NamedTuple

from cli.kit.call import Call
from cli.kit.files import make_folder, write
from cli.kit.tables import print_json, print_lines
from ledger.domain.entries.choices import LotType
from ledger.domain.lots.lot import Status
from ledger.errors import InputError
from ledger.service.desk.book import Book
from ledger.service.desk.clock import house_of
from ledger.service.glass.serving import card
from ledger.service.lots.dossier import dossier, find_lot
from ledger.service.lots.stock import stock
from reports.json.kit.answer import File
from reports.kit.format import plural
from reports.kit.pages import page_folders, symbol_address
from reports.web.goods.page import html_page
from reports.words.goods.page import page_view


def write_pages(call: Call, lot: str | None, out: Path, *, every: bool) -> None:
    """Write the page of a lot, or of all that were bottled."""
    if (lot is None) is not every:
        raise InputError(
            "A page is of one lot or of all.", "Name a lot, or give --all for every bottled one."
        )
    book = call.book()
    codes = _bottled(book) if every else [find_lot(book, lot or "", call.writer)]
    pages = [_page(book, code) for code in codes]
    places = [_put(out / folder, page.text) for page in pages for folder in page.folders]
    if call.json:
        print_json([File(str(place)) for place in places])
        return
    print_lines([f"{plural(len(pages), 'page')} in {out}: put that folder where it can be read."])
    house = house_of(book)
    if house and house.web and pages:
        print_lines([f"A label's symbol leads to {pages[0].address}"])
    else:
        print_lines(["Next: pottle house --web URL, so that labels lead there"])


class _Page(NamedTuple):
    """The page of a lot, and where it goes."""

    text: str
    folders: tuple[str, ...]
    address: str


def _page(book: Book, code: str) -> _Page:
    found = dossier(book, code)
    house, name = found.house, found.lot.name
    return _Page(
        html_page(page_view(found, card(book, code))),
        page_folders(house, name, code),
        symbol_address(house, name, code, found.state.best_before),
    )


def _bottled(book: Book) -> list[str]:
    lots = stock(book, everything=True)
    packed = (lot for lot in lots if lot.lot_type is LotType.PACKED)
    return [lot.code for lot in packed if lot.status is not Status.STRUCK]


def _put(folder: Path, text: str) -> Path:
    """Write a page as the index of a folder of its own, so that its address ends in the code."""
    make_folder(folder, parents=True)
    place = folder / "index.html"
    write(place, text.encode(), force=True)
    return place
