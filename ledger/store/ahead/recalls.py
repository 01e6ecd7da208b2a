"""What is asked of the recalls that stand open, foretold for a server.

Guarantees: only what is asked of each in its time. Refuses: to foretell it of more than a few; of
the others it is asked one after the other.
"""

from ledger.store.ahead.traced import foresee_reach
from ledger.store.engine.foretold import Foreseen
from ledger.store.read import queries

MOST_FORESEEN = 5
"""Of how many open recalls it is foretold what is asked of them; of more it is asked in time."""
# Its lot is the first that a verdict of an act recalls; open it is while nothing was said since.
_OPEN = (
    "SELECT lot FROM (SELECT DISTINCT ON (e.recorded_at, e.happened_at) "
    "e.seq, e.lot, e.happened_at AS at, e.stands_for AS nth "
    "FROM judge j JOIN entry e ON e.seq = j.seq LEFT JOIN entry c ON c.corrects = e.seq "
    "WHERE j.verdict = 'recall' AND c.corrects IS NULL "
    "ORDER BY e.recorded_at, e.happened_at, e.seq) AS begun "
    "WHERE NOT EXISTS (SELECT 1 FROM entry o LEFT JOIN entry c ON c.corrects = o.seq "
    "WHERE o.lot = begun.lot AND o.kind IN ('judge', 'closing') AND c.corrects IS NULL "
    "AND (o.happened_at, o.stands_for) > (begun.at, begun.nth)) "
    "ORDER BY seq LIMIT 1 OFFSET :place"
)
_CODE = "SELECT code FROM lot WHERE id = :lot"


def foresee_open(foreseen: Foreseen) -> None:
    """Foretell which lots the recalls reach that are not closed."""
    for place in range(MOST_FORESEEN):
        lot = foreseen.finds("BIGINT", _OPEN, place=place)
        foreseen.asks(queries.lot_by_code, foreseen.finds("TEXT", _CODE, lot=lot))
        foresee_reach(foreseen, lot)
