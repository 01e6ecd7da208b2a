"""Reading from which sheets entries were copied.

Guarantees: entries that were struck out are left out, so that what they were copied from can be
copied again.
"""

from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask

_SHEETS = """SELECT e.seq, e.sheet FROM entry e WHERE e.sheet IS NOT NULL AND NOT EXISTS
(SELECT 1 FROM entry c WHERE c.corrects = e.seq AND c.kind = 'strike') ORDER BY e.seq"""


def sheets(connection: Connection) -> list[tuple[int, str]]:
    """Return the number and the sheet of every entry that was copied from one."""
    return [(int(seq), str(sheet)) for seq, sheet in ask(connection, _SHEETS)]
