"""Lots by their whole codes.

Guarantees: a lot that is returned is in the book. Refuses: codes that are not, in words.
"""

from ledger.errors import RefusedError
from ledger.store.engine.connections import Connection
from ledger.store.read import queries
from ledger.store.read.queries import LotRow


def known_lot(connection: Connection, code: str) -> LotRow:
    """Return the lot with that whole code.

    Raises:
        RefusedError: It is not in the book.
    """
    row = queries.lot_by_code(connection, code)
    if row is None:
        raise RefusedError(
            f"The lot {code} is not in the book.", "pottle stock lists the lots that are."
        )
    return row
