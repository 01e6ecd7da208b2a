"""Of which materials in a lot the book lacks a fact that a label declares.

Guarantees: the facts are those that a list of ingredients names as gaps.
"""

from ledger.science.contents.ingredients import AIDS, PACKING, gaps_of
from ledger.service.account.contents import contents_on
from ledger.store.engine.connections import Connection
from ledger.store.read import queries


def undeclared(connection: Connection, code: str) -> tuple[str, ...]:
    """Return the codes of the materials in a lot of which such a fact is missing."""
    received = contents_on(connection, code).received.values()
    known = (
        queries.material(connection, each) for each in sorted({lot.material for lot in received})
    )
    return tuple(
        item.code for item in known if item and item.sort not in AIDS | PACKING and gaps_of(item)
    )
