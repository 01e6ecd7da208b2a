"""What an act will ask of the book, told from its words before it asks: for a server, all at once.

Guarantees: words that name no whole code are left for later; nothing is refused here. Refuses: to
judge; it is only foretold what will be read.
"""

from collections.abc import Sequence
from contextlib import suppress

from ledger.domain.entries.plain import instant_text
from ledger.domain.lots.codes import clean_code
from ledger.errors import LedgerError
from ledger.service.desk.book import Book, How, wall_clock
from ledger.store.engine.acts import Foretell
from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.turn import Found
from ledger.store.read import foreseen as reads


def foretold(book: Book, how: How, lot: str | None, sources: Sequence[str | None]) -> Foretell:
    """Return what tells what an act will ask, by its words as they were typed."""

    def foretell(foreseen: Foreseen) -> None:
        drawn_on = [code for text in sources if (code := _code(text))]
        reads.foresee_all(foreseen)
        about: str | Found | None = _code(lot)
        if lot and lot.strip() == "." and how.by:
            about = reads.in_hand(foreseen, how.by.strip().upper())
        if about:
            reads.foresee_lot(foreseen, about, drawn_on, _second(book, how, foreseen))
        for code in drawn_on:
            reads.foresee_source(foreseen, code)

    return foretell


def _code(text: str | None) -> str | None:
    with suppress(LedgerError):
        return clean_code(text) if text and text.strip() != "." else None
    return None


def _second(book: Book, how: How, foreseen: Foreseen) -> str | Found | None:
    if how.at:  # on the house's clock, which is not known yet
        return None
    return reads.second(foreseen) if book.clock is wall_clock else instant_text(book.clock())
