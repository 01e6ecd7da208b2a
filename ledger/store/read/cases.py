"""Numbers of cases.

Guarantees: the number of a case that was struck, or corrected away, is not given again.
"""

from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask_one

_NEXT = "SELECT COALESCE(MAX(first_case + count), 1) FROM cases"


def next_case(connection: Connection) -> int:
    """Return the number of the next case in the house."""
    number: int = ask_one(connection, _NEXT)
    return number
