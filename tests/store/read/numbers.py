"""The numbers of the lots of the main path, by which rows are asked for."""

from ledger.store.engine.connections import Connection
from ledger.store.read import queries
from tests.keeper import Keeper
from tests.path import Lots

Walked = tuple[Keeper, Lots]


def number(connection: Connection, code: str) -> int:
    """Return the number of a lot by its code."""
    lot = queries.lot_by_code(connection, code)
    assert lot is not None
    return lot.seq
