"""Lots that wait for something: the end of a rest, a kept sample, a look that a formula asks for.

Guarantees: a statement each over a typed table, whatever the size of the book; only entries in
force count. Whether something is due is for others to say.
"""

from msgspec import Struct

from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask_column
from ledger.store.read.queries import OF_TABLE

_RESTS = OF_TABLE.format(table="rest")
_MOVES = OF_TABLE.format(table="move")
_STARTS = OF_TABLE.format(table="start")
_RESTING = (
    f"SELECT DISTINCT e.lot {_RESTS} "
    "AND t.ended_at IS NULL AND e.stands_for NOT IN (SELECT o.began FROM rest o "
    "LEFT JOIN entry d ON d.corrects = o.seq WHERE d.corrects IS NULL AND o.began IS NOT NULL) "
    "ORDER BY e.lot"
)
_RETAINED = f"SELECT DISTINCT e.lot {_MOVES} AND t.moved_as = 'retained' ORDER BY e.lot"
_BY_FORMULA = f"SELECT e.stands_for {_STARTS} AND t.formula IS NOT NULL ORDER BY e.stands_for"


class Waiting(Struct, frozen=True):
    """The numbers of lots that wait."""

    resting: list[int]
    """Those of which a rest has begun and not ended."""
    retained: list[int]
    """Those of which samples were kept back."""
    by_formula: list[int]
    """Batches that follow a formula, which may ask for a look."""

    @property
    def lots(self) -> set[int]:
        """All of them."""
        return {*self.resting, *self.retained, *self.by_formula}


def waiting_lots(connection: Connection) -> Waiting:
    """Return the lots that wait."""
    return Waiting(
        resting=ask_column(connection, _RESTING),
        retained=ask_column(connection, _RETAINED),
        by_formula=ask_column(connection, _BY_FORMULA),
    )
