"""The packet of a lot or a period: what an inspector asks for, gathered.

Guarantees: of a lot, the lot and all that was made here and is in it; of a period, every lot that
was opened in it; all their entries, in force or not.
"""

from datetime import date

from msgspec import Struct

from ledger.domain.entries import Clean, Entry, Equipment
from ledger.domain.entries.choices import LotType
from ledger.service.desk.book import Book
from ledger.service.desk.clock import house_of, now_at_home, written_at, zone_of
from ledger.service.lots.dossier import Dossier, dossier
from ledger.service.lots.journal import Said, entries_of_kind, journal
from ledger.service.lots.stock import stock
from ledger.service.lots.trace import trace

MADE_HERE = (LotType.MADE, LotType.PACKED, LotType.RINSE)
"""Lots that have a record of how they were made."""


class Packet(Struct, frozen=True):
    """What is gathered."""

    dossiers: tuple[Dossier, ...]
    """The lots, those asked for first."""
    said: tuple[Said, ...]
    """Every entry, in force or not, by number."""
    upkeep: tuple[Entry, ...]
    """Cleaning and instruments in its days, by when it happened."""
    first: date
    """Its first day."""
    last: date
    """Its last day."""


def packet_of_lot(book: Book, text: str, by: str | None) -> Packet:
    """Return the packet of a lot: it, and all in it that was made here."""
    first = dossier(book, text, by)
    nodes = trace(book, first.state.code, forward=False).nodes
    behind = [n.brief.code for n in nodes if n.brief.lot_type in MADE_HERE]
    dossiers = [first, *(dossier(book, code) for code in behind if code != first.state.code)]
    entries = {said.entry.seq: said for found in dossiers for said in found.said}
    days = [said.entry.draft.happened.local().date() for said in entries.values()]
    began = min(days, default=now_at_home(book).date())
    return _packet(book, dossiers, [entries[seq] for seq in sorted(entries)], began, _newest(book))


def packet_of_period(book: Book, first: date, last: date) -> Packet:
    """Return the packet of a period: every lot opened in it, and all entries of its days."""
    lots = [
        lot
        for lot in stock(book, everything=True)
        if lot.opened_at and first <= lot.opened_at.local().date() <= last
    ]
    dossiers = [dossier(book, lot.code) for lot in sorted(lots, key=lambda lot: lot.position)]
    said = [
        item
        for item in journal(book).said
        if first <= item.entry.draft.happened.local().date() <= last
    ]
    return _packet(book, dossiers, said, first, last)


def _packet(
    book: Book, dossiers: list[Dossier], said: list[Said], first: date, last: date
) -> Packet:
    acts: list[Entry] = [*entries_of_kind(book, Clean), *entries_of_kind(book, Equipment)]
    upkeep = [act for act in acts if first <= act.draft.happened.local().date() <= last]
    return Packet(
        dossiers=tuple(dossiers),
        said=tuple(said),
        upkeep=tuple(sorted(upkeep, key=lambda act: act.position)),
        first=first,
        last=max(first, last),
    )


def _newest(book: Book) -> date:
    """Return the day of the newest entry on the house's clock."""
    newest = written_at(book)
    return newest.astimezone(zone_of(house_of(book))).date() if newest else now_at_home(book).date()
