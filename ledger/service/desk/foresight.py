"""What an act will ask of the book, told from its words before it asks: for a server, all at once.

Guarantees: words that name no whole code are left for later; nothing is refused here. Refuses: to
judge; it is only foretold what will be read.
"""

from contextlib import suppress
from datetime import UTC, timedelta, timezone
from typing import Any

from msgspec import Struct

from ledger.domain.entries.plain import instant_text
from ledger.domain.entries.texts import read_text
from ledger.domain.lots.codes import clean_code, stem_for
from ledger.errors import LedgerError
from ledger.service.desk.book import Book, How, wall_clock
from ledger.service.desk.numbers import entry_number
from ledger.service.desk.standing import foresee_standing
from ledger.service.desk.times import read_when
from ledger.store.ahead import foreseen as reads
from ledger.store.ahead.later import Touched, foresee_entry
from ledger.store.ahead.named import foresee_ending, foresee_first_of, is_short
from ledger.store.ahead.traced import foresee_trace
from ledger.store.engine.acts import Foretell
from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.turn import Found
from ledger.store.read import queries
from ledger.store.write.recorder import first_of

_ELSEWHERE = timezone(timedelta(hours=1))


class Ahead(Struct, frozen=True):
    """What the words of an act say ahead of what it will ask, as they were typed."""

    lot: str | None = None
    """The lot that it is about."""
    sources: tuple[str | None, ...] = ()
    """The lots that it draws on."""
    is_packed: bool = False
    """Whether the lot may be one of bottles."""
    packed: tuple[str, ...] = ()
    """Further lots that it is about, each of bottles."""
    is_traced: bool = False
    """Whether it follows a lot that may be one of bottles to all that is made of it."""
    fills: str | None = None
    """The lot that it fills into bottles, which are a lot that it opens."""
    opens: str | None = None
    """Of what the lot that it opens is to have its code."""
    material: str | None = None
    """The material that it names."""
    party: str | None = None
    """Somebody outside the house whom it names."""
    entry: str | None = None
    """The number of the entry that it corrects or strikes."""
    instead: tuple[str, ...] = ()
    """The lots that this is to draw on instead."""
    checked: str | None = None
    """The number of an entry that this is to check instead."""
    about: str | None = None
    """The number of an entry about whose lot, which may be one of bottles, it is too."""
    also: tuple[tuple[Any, ...], ...] = ()
    """What else it reads: each a reader of the book with what it is given besides."""
    besides: Foretell | None = None
    """What foretells what else it reads."""
    is_now: bool = False
    """Whether, where no time is told, a correction happens now and not when the entry did."""


def foretold(book: Book, how: How, ahead: Ahead) -> Foretell:
    """Return what tells what an act will ask, by its words as they were typed."""

    def foretell(foreseen: Foreseen) -> None:
        reads.foresee_all(foreseen)
        drawn_on = [code for text in ahead.sources if (code := _drawn_on(text, book, foreseen))]
        if about := _named(how, ahead.lot, foreseen):
            number = reads.foresee_lot(foreseen, about, drawn_on, _second(book, how, foreseen))
            if ahead.is_packed:
                reads.foresee_packed(foreseen, number)
            if ahead.is_traced:
                foresee_trace(foreseen, number)
        for code in filter(None, map(_code, ahead.packed)):
            also = reads.foresee_lot(foreseen, code, (), _second(book, how, foreseen))
            reads.foresee_packed(foreseen, also)
        with suppress(LedgerError):
            if ahead.about:
                at = _second(book, how, foreseen)
                reads.foresee_about(foreseen, entry_number(ahead.about), at)
        if filled := _named(how, ahead.fills, foreseen):
            reads.foresee_source(foreseen, filled)
            reads.foresee_filling(foreseen, filled)
        for code in drawn_on:
            reads.foresee_source(foreseen, code)
        _besides(foreseen, ahead)
        with suppress(LedgerError):
            at = _second(book, how, foreseen) if how.at or ahead.is_now else None
            _corrected(foreseen, entry_number(ahead.entry or ""), ahead, at)

    return foretell


def _corrected(foreseen: Foreseen, entry: int, ahead: Ahead, at: str | Found | None) -> None:
    """Foretell what is asked to correct or strike an entry."""
    for kind, key in foresee_entry(foreseen, entry).items():
        foreseen.asks(first_of, kind, key)
    with suppress(LedgerError):
        reads.foresee_checked(foreseen, entry_number(ahead.checked or ""))
    instead = tuple(code for text in ahead.instead if (code := _code(text)))
    foresee_standing(foreseen, Touched(entry, sources=instead, at=at))


def _besides(foreseen: Foreseen, ahead: Ahead) -> None:
    """Foretell what is asked of other things than lots."""
    if ahead.opens and ahead.opens.strip():
        reads.foresee_code(foreseen, stem_for(ahead.opens))
    for reader, *cells in ahead.also:
        foreseen.asks(reader, *cells)
    if ahead.besides:
        ahead.besides(foreseen)
    # Each as its reader reads it, so that no server is asked for what none can be.
    with suppress(LedgerError):
        reads.foresee_material(foreseen, read_text(ahead.material or "", "code").lower())
    with suppress(LedgerError):
        reads.foresee_party(foreseen, read_text(ahead.party or "", "name"))


def _code(text: str | None) -> str | None:
    with suppress(LedgerError):
        return clean_code(text) if text and text.strip() != "." else None
    return None


def _named(how: How, text: str | None, foreseen: Foreseen) -> str | Found | None:
    """Return the code that a text is, or that of the lot in hand as it will be found."""
    if text and text.strip() == "." and how.by:
        return reads.in_hand(foreseen, how.by.strip().upper())
    code = _code(text)
    return foresee_ending(foreseen, code) if code and is_short(code) else code


def _drawn_on(text: str | None, book: Book, foreseen: Foreseen) -> str | Found | None:
    """Return the code of a lot that is drawn on, or as it will be found by its material."""
    code = _code(text)
    if code is None or not is_short(code):
        return code
    foreseen.asks(queries.material, code.lower())
    if any(map(str.isdigit, code)):
        return foresee_ending(foreseen, code)
    foreseen.asks(queries.lot_by_code, code)
    return foresee_first_of(foreseen, code.lower(), book.clock().date())


def _second(book: Book, how: How, foreseen: Foreseen) -> str | Found | None:
    """Return when an act happened, as an instant; None where what was typed is no time."""
    if not how.at:
        return reads.second(foreseen) if book.clock is wall_clock else instant_text(book.clock())
    with suppress(LedgerError):
        now = book.clock()
        here, elsewhere = (read_when(how.at, now, zone).at for zone in (UTC, _ELSEWHERE))
        # What is the same in every zone was not typed as the house's clock shows it.
        told = instant_text(here)
        return told if here == elsewhere else reads.second_at_home(foreseen, told)
    return None
