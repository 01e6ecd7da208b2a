"""What stood around a lot: its people, its vessels and their cleaning, its instruments.

Guarantees: of a vessel the last cleaning before the lot used it is told, of an instrument the last
check before it was read; where there is none in the book, None says so.
"""

from collections.abc import Callable, Iterable
from typing import TypeVar

from msgspec import Struct

from ledger.domain.entries import (
    Add,
    Clean,
    Entry,
    Equipment,
    Facts,
    Look,
    Measurement,
    Party,
    Person,
    Rest,
    Start,
)
from ledger.domain.lots.state import LotState
from ledger.service.desk.book import Book
from ledger.store.read import queries

FactsT = TypeVar("FactsT", bound=Facts)


class Seen(Struct, frozen=True):
    """A vessel or an instrument that a lot was made with."""

    name: str
    """Which one, as it was written."""
    last: Entry | None
    """When it was last cleaned, or checked, before the lot had to do with it."""


class Around(Struct, frozen=True):
    """What stood around a lot."""

    people: tuple[Person, ...]
    """Those who wrote of it, by their initials."""
    vessels: tuple[Seen, ...]
    """The vessels it stood in, each with its last cleaning before."""
    instruments: tuple[Seen, ...]
    """The instruments it was read on, each with its last check before."""
    parties: tuple[Party, ...] = ()
    """Suppliers and customers, with how to reach them."""


def around(book: Book, state: LotState) -> Around:
    """Return what stood around a lot, and around its bulk."""
    entries = (*(state.bulk.entries if state.bulk else ()), *state.entries)
    writers = {entry.draft.by for entry in entries}
    with book.reading() as connection:
        cleanings = queries.entries_of_kind(connection, Clean)
        checks = queries.entries_of_kind(connection, Equipment)
        people = queries.persons(connection)
        parties = queries.parties(connection)
    return Around(
        people=tuple(person for person in people if person.initials in writers),
        vessels=_seen(entries, _vessel, cleanings, lambda facts: facts.vessel),
        instruments=_seen(entries, _instrument, checks, lambda facts: facts.name),
        parties=parties,
    )


def _vessel(facts: Facts) -> str | None:
    return facts.vessel if isinstance(facts, Start | Rest) else None


def _instrument(facts: Facts) -> str | None:
    return facts.instrument if isinstance(facts, Add | Look | Measurement) else None


def _seen(
    entries: Iterable[Entry],
    named: Callable[[Facts], str | None],
    acts: Iterable[Entry[FactsT]],
    name_of: Callable[[FactsT], str],
) -> tuple[Seen, ...]:
    """Return what entries name, each once, with the last act on it before its first use."""
    first: dict[str, tuple[str, Entry]] = {}
    for entry in entries:
        if name := named(entry.facts):
            first.setdefault(name.casefold(), (name, entry))
    acts = list(acts)
    return tuple(
        Seen(name, _last_before(use, [a for a in acts if name_of(a.facts).casefold() == key]))
        for key, (name, use) in first.items()
    )


def _last_before(use: Entry, acts: Iterable[Entry[FactsT]]) -> Entry[FactsT] | None:
    before = [act for act in acts if act.draft.happened.at <= use.draft.happened.at]
    return max(before, key=lambda act: act.position, default=None)
