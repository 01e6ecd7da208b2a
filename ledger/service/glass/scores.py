"""How often a look fell inside what was foretold of it before.

Guarantees: only looks taken after a forecast was written count, each against the last one before
it; a reading counts before a word. Refuses: a look of what no band was foretold for.
"""

from collections.abc import Iterator
from math import inf

from msgspec import Struct

from ledger.domain.entries import Entry, Foretold, Look
from ledger.domain.entries.choices import Grade
from ledger.service.desk.book import Book
from ledger.store.engine.connections import Connection
from ledger.store.read import queries

GRADES = {
    Grade.BRIGHT: (0.0, 1.0),
    Grade.CLEAR: (0.0, 3.0),
    Grade.HAZY: (3.0, 6.0),
    Grade.OPALESCENT: (6.0, 18.0),
    Grade.CLOUDY: (18.0, 30.0),
    Grade.MILKY: (30.0, inf),
}
"""What a grade comes to in NTU: upper edges are those of reference suspensions I to IV of Ph. Eur.
2.2.1; which word stands for which is common practice, no source."""


class Held(Struct, frozen=True):
    """A look held against the forecast before it."""

    lot: str
    """Code of the lot."""
    look: int
    """Number of the look's entry."""
    oils: str
    """The kinds of oil in it."""
    ratio: float | None
    """A reading over the middle of its band; None for a word alone, or a band from nought."""
    is_inside: bool
    """Whether it fell inside."""


class Score(Struct, frozen=True):
    """How many looks fell inside."""

    oils: str | None
    """Of which kind of oil; None: of all."""
    inside: int
    """How many did."""
    looks: int
    """Of how many."""


def scores(book: Book) -> tuple[Score, ...]:
    """Return how often forecasts were right, of all and by kind of oil."""
    with book.reading() as connection:
        held = list(looks_held(connection))
    kinds = sorted({item.oils for item in held})
    return (
        _score(None, held),
        *(_score(kind, [item for item in held if item.oils == kind]) for kind in kinds),
    )


def own_ratios(connection: Connection) -> tuple[float, ...]:
    """Return each reading of the maker's over the middle of what was foretold of it."""
    return tuple(item.ratio for item in looks_held(connection) if item.ratio is not None)


def looks_held(connection: Connection) -> Iterator[Held]:
    """Yield every look in force of a lot that was foretold before it."""
    by_lot: dict[str, Foretold] = {}
    both: list[Entry] = [
        *queries.entries_of_kind(connection, Foretold),
        *queries.entries_of_kind(connection, Look),
    ]
    # By when they were written first: what is foretold after a look was no forecast of it.
    for entry in sorted(both, key=lambda item: item.stands_for):
        lot = entry.draft.lot
        if lot is None:
            continue
        facts = entry.facts
        if isinstance(facts, Foretold):
            by_lot[lot] = facts
        elif isinstance(facts, Look) and lot in by_lot:
            found = _held(by_lot[lot], facts, lot, entry.seq)
            if found:
                yield found


def _held(foretold: Foretold, look: Look, lot: str, seq: int) -> Held | None:
    band = foretold.band(look.looked_at)
    if band is None:
        return None
    low, high = band
    ratio = None
    if look.ntu_milli is not None:
        read = look.ntu_milli / 1000
        is_inside = low <= read <= high
        middle = foretold.middle(look.looked_at)
        ratio = read / middle if middle and read else None
    else:
        least, most = GRADES[look.grade]
        is_inside = low <= most and least <= high
    return Held(lot, seq, foretold.oils, ratio, is_inside)


def _score(oils: str | None, held: list[Held]) -> Score:
    return Score(oils, sum(item.is_inside for item in held), len(held))
