"""What came into lots and what went out of them, many lots at once.

Guarantees: a constant number of statements for a chunk of lots; only postings in force count.
Refuses: to say what is on hand; counts and measured levels decide that.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from ledger.domain.entries.choices import Place
from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask_for, chunks

_IN = (
    "SELECT p.target AS lot, p.place, SUM(p.given) AS amount FROM {wanted} w "
    "CROSS JOIN posting p LEFT JOIN entry c ON c.corrects = p.seq "
    "WHERE c.corrects IS NULL AND p.target = w.lot GROUP BY p.target, p.place"
)
_OUT = (
    "SELECT p.source AS lot, p.place, SUM(p.taken) AS amount FROM {wanted} w "
    "CROSS JOIN posting p LEFT JOIN entry c ON c.corrects = p.seq "
    "WHERE c.corrects IS NULL AND p.source = w.lot GROUP BY p.source, p.place"
)


Summed = tuple[int, Place | None, int]
"""A lot, a place outside of it or None for other lots, and an amount in the lot's measure."""


@dataclass(slots=True)
class Turnover:
    """What came into a lot and what went out of it, each in the lot's measure."""

    came: int = 0
    """What came in from lots, suppliers and filling; by volume only what is a volume."""
    returned: int = 0
    """What came back from outside."""
    used: int = 0
    """What went into other lots."""
    gone: dict[Place, int] = field(default_factory=dict)
    """What left for each place."""


def turnovers(
    connection: Connection,
    lots: Iterable[int],
    tick: Callable[[int, int], None] = lambda _done, _total: None,
) -> Mapping[int, Turnover]:
    """Return what came into each lot and went out of it, by number.

    Args:
        connection: A connection in a transaction.
        lots: Numbers of the lots.
        tick: Told how many of how many are done.
    """
    wanted = sorted(set(lots))
    turnover_of = {lot: Turnover() for lot in wanted}
    done = 0
    for chunk in chunks(wanted):
        for lot, place, amount in came_in(connection, chunk):
            if place is Place.RETURNED:
                turnover_of[lot].returned += amount
            else:
                turnover_of[lot].came += amount
        for lot, place, amount in went_out(connection, chunk):
            if place is None:
                turnover_of[lot].used += amount
            else:
                turnover_of[lot].gone[place] = amount
        done += len(chunk)
        tick(done, len(wanted))
    return turnover_of


def came_in(connection: Connection, lots: Sequence[int]) -> list[Summed]:
    """Return what came into lots from each place, or from other lots."""
    return _rows(connection, _IN, sorted(lots))


def went_out(connection: Connection, lots: Sequence[int]) -> list[Summed]:
    """Return what went out of lots to each place, or into other lots."""
    return _rows(connection, _OUT, sorted(lots))


OF_LOTS = (came_in, went_out)
"""What reads it of lots, each by one statement."""


def _rows(connection: Connection, query: str, lots: Sequence[int]) -> list[Summed]:
    rows = ask_for(connection, query, lots)
    return [(lot, Place(place) if place else None, int(amount)) for lot, place, amount in rows]
