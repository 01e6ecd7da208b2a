"""Which command usually comes next after looking something up: stock, what is due, a trace.

Guarantees: every step is a command of ours, read off what was just shown; words in capitals are for
the maker to fill in.
"""

from collections.abc import Sequence
from datetime import datetime

from ledger.domain.entries.choices import Grade, LotType
from ledger.domain.lots.lot import BARRED, Lot, Status
from ledger.service.lots.due import Due, Waits
from ledger.service.lots.stock import Low
from ledger.service.lots.trace import Trace

UNDER_WAY = frozenset({Status.MAKING, Status.PACKED})
"""Where a lot stands that waits for the bench or for its release."""
CLEAR_ENOUGH = frozenset({Grade.BRIGHT, Grade.CLEAR})
"""Grades at which nobody asks for a cause."""
RECEIVE = "pottle receive MATERIAL AMOUNT"


def step_of_due(item: Due, now: datetime) -> str:
    """Return the command for something that is due."""
    match item.waits:
        case Waits.REST:
            return f"pottle rest {item.lot} --end"
        case Waits.LOOK:
            return f"pottle look {item.lot} GRADE --of neat"
        case Waits.ANSWER:
            return f"pottle answer {item.number} OUTCOME --told today"
        case Waits.DATE if item.at is not None and item.at < now:
            return f'pottle reject {item.lot} --because "past its date"'
        case _:
            return f"pottle lot {item.lot}"


def step_of_stock(lots: Sequence[Lot]) -> str:
    """Return what comes after a list of stock.

    Counting what the book has less than nothing of, else the newest lot under way, else what is
    due.
    """
    if not lots:
        return RECEIVE
    below = [lot for lot in lots if lot.on_hand < 0]
    if below:
        return f"pottle count {below[0].code} AMOUNT"
    under_way = [lot for lot in lots if lot.status in UNDER_WAY]
    if under_way:
        newest = max(under_way, key=lambda lot: lot.position)
        return f"pottle lot {newest.code}"
    return "pottle due"


def step_of_low(lows: Sequence[Low]) -> str:
    """Return what comes after a list of what is low: receiving what is lowest."""
    return receiving(lows[0]) if lows else "pottle stock"


def receiving(low: Low) -> str:
    """Return the command that receives more of a material."""
    return f"pottle receive {low.material.code} AMOUNT"


def step_of_trace(trace: Trace) -> str:
    """Return what comes after a trace: its cause, a try at its recall, or the lot itself."""
    lot = trace.lot
    is_ours = lot.lot_type in (LotType.MADE, LotType.PACKED)
    if is_ours and lot.grade and lot.grade not in CLEAR_ENOUGH:
        return f"pottle suspects {lot.code}"
    if lot.status in BARRED or trace.holders:
        return f"pottle recall {lot.code} --drill"
    return f"pottle lot {lot.code}"
