"""What was made, and how much of finished lots; what a bottle holds, and which case is next.

Guarantees: a constant number of statements for a chunk of lots; only entries in force count, save
that the number of a case that was struck, or corrected away, is not given again.
Refuses: to say what unfinished lots will come to.
"""

from collections.abc import Iterable

from ledger.domain.entries.choices import ProductKind
from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import among, ask, ask_for, ask_one, chunks, go_by_index

_THEN = (
    "(e.happened_at {0} done.happened_at "
    "OR (e.happened_at = done.happened_at AND e.stands_for {0} done.stands_for))"
)
_MOVED = (
    "COALESCE((SELECT SUM(p.{amount}) FROM posting p JOIN entry e ON e.seq = p.seq "
    "LEFT JOIN entry c ON c.corrects = e.seq "
    "WHERE c.corrects IS NULL AND p.{end} = done.lot {more} AND {then}), 0)"
)
_FINISHED = (
    "SELECT done.lot, done.amount + {came} + {went} - {back} AS made FROM ("
    "SELECT l.lot, l.amount, e.happened_at, e.stands_for, ROW_NUMBER() OVER ("
    "PARTITION BY l.lot ORDER BY e.happened_at DESC, e.stands_for DESC) AS nth "
    "FROM {wanted} w CROSS JOIN level l JOIN entry e ON e.seq = l.seq "
    "LEFT JOIN entry c ON c.corrects = e.seq "
    "WHERE c.corrects IS NULL AND e.kind = 'finish' AND l.lot = w.lot) done "
    "WHERE done.nth = 1".format(
        wanted="{wanted}",
        came=_MOVED.format(
            amount="given",
            end="target",
            more="AND (p.place IS NULL OR p.place <> 'returned')",
            then=_THEN.format(">"),
        ),
        went=_MOVED.format(amount="taken", end="source", more="", then=_THEN.format("<")),
        back=_MOVED.format(
            amount="given", end="target", more="AND p.place = 'returned'", then=_THEN.format("<")
        ),
    )
)
_SIZES = (
    "SELECT e.stands_for AS lot, b.size FROM {wanted} w CROSS JOIN entry e "
    "JOIN bottle b ON b.seq = e.seq LEFT JOIN entry c ON c.corrects = e.seq "
    "WHERE c.corrects IS NULL AND e.stands_for = w.lot"
)


def finished(connection: Connection, lots: Iterable[int]) -> dict[int, int]:
    """Return what came out of each finished lot, with what was added after and drawn before.

    What was drawn before and came back before is in what came out, and counts once.
    """
    return _by_lot(connection, _FINISHED, lots)


def bottle_sizes(connection: Connection, lots: Iterable[int]) -> dict[int, int]:
    """Return what a bottle of each packed lot holds, in µL."""
    return _by_lot(connection, _SIZES, lots)


def _by_lot(connection: Connection, query: str, lots: Iterable[int]) -> dict[int, int]:
    wanted = sorted(set(lots))
    amounts: dict[int, int] = {}
    for chunk in chunks(wanted):
        amounts |= {lot: int(amount) for lot, amount in ask_for(connection, query, chunk)}
    return amounts


def next_case(connection: Connection) -> int:
    """Return the number of the next case in the house."""
    number: int = ask_one(connection, "SELECT COALESCE(MAX(first_case + count), 1) FROM cases")
    return number


def kinds_made(connection: Connection, codes: Iterable[str]) -> dict[str, ProductKind]:
    """Return what kind of thing each of some lots is, by its code; of those that were begun here.

    A lot whose beginning was struck is not among them.
    """
    go_by_index(connection)
    listed, cells = among(codes)
    query = (
        "SELECT lot.code, s.product_kind FROM lot JOIN entry e ON e.stands_for = lot.id "
        "JOIN start s ON s.seq = e.seq LEFT JOIN entry c ON c.corrects = e.seq "
        f"WHERE lot.code IN ({listed}) AND c.corrects IS NULL"
    )
    return {code: ProductKind(kind) for code, kind in ask(connection, query, **cells)}
