"""Of which materials in a lot the book lacks a fact that a label declares.

Guarantees: the facts are those that a list of ingredients names as gaps.
"""

from ledger.domain.masters.gaps import Gap, gaps_of
from ledger.service.account.contents import contents_on
from ledger.store.engine.connections import Connection
from ledger.store.read.received import materials


def undeclared(connection: Connection, code: str) -> tuple[Gap, ...]:
    """Return what is missing of the materials in a lot, by material."""
    received = contents_on(connection, code).received.values()
    known = materials(connection, sorted({lot.material for lot in received}))
    return tuple(gap for item in known.values() for gap in gaps_of(item))
