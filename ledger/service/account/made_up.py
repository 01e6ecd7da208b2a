"""How much of a lot brings a batch to a volume, by what is in both.

Guarantees: what mixing takes is made good: water to spirit takes more than the volumes differ by.
"""

from ledger.domain.entries import When
from ledger.domain.entries.plain import instant_text
from ledger.science.contents.composition import Contents, add, scaled
from ledger.science.roots import solve
from ledger.service.account.codes import known_lot
from ledger.service.account.replay import replayed
from ledger.store.engine.connections import Connection

MOST_TIMES = 4
"""How many times a volume what brings a batch to it is looked for: mixing takes 4 % at most."""


def used_to_make_up(
    connection: Connection, code: str, source: str, to_ul: int, happened: When
) -> int | None:
    """Return how much of a lot brought a batch to a volume, in µL, rounded half to even.

    Args:
        connection: A connection in a transaction.
        code: The batch's whole code.
        source: The lot's whole code.
        to_ul: The volume in µL.
        happened: When; what happened in the same second was before.

    Returns:
        None where the lot's contents do not say what it fills.
    """
    rows = [known_lot(connection, lot) for lot in (code, source)]
    replay = replayed(connection, [row.seq for row in rows]).replay
    there, at = Contents(), instant_text(happened.at)
    for item in replay.happenings(code):
        there = item.after if item.step.at <= at else there
    whole = replay.contents(source)
    if whole.volume_ul <= 0:
        return None

    def together_ul(used_ul: float) -> float:
        return add(there, scaled(whole, used_ul / whole.volume_ul)).volume_ul

    return round(solve(together_ul, float(to_ul), 0.0, float(MOST_TIMES * to_ul)))
