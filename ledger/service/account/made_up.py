"""How much of a lot brings a batch to a volume, by what is in both.

Guarantees: what mixing takes is made good: water to spirit takes more than the volumes differ by.
"""

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import When
from ledger.domain.entries.plain import instant_text
from ledger.science.contents.composition import Contents, add, scaled
from ledger.science.roots import solve
from ledger.service.account.codes import known_lot
from ledger.service.account.replay import replayed
from ledger.store.engine.connections import Connection

LITRE = 1_000_000
"""Smallest units of which the contents of a received lot are told."""
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
        How much; None where the lot's contents do not say what it fills.
    """
    there, whole = _both(connection, code, source, happened)
    if whole.volume_ul <= 0:
        return None

    def together_ul(used_ul: float) -> float:
        return add(there, scaled(whole, used_ul / whole.volume_ul)).volume_ul

    return round(solve(together_ul, float(to_ul), 0.0, float(MOST_TIMES * to_ul)))


def volume_with(connection: Connection, code: str, source: str, taken: int, happened: When) -> int:
    """Return the volume of a batch in µL with so much of a lot in it.

    Args:
        connection: A connection in a transaction.
        code: The batch's whole code.
        source: The lot's whole code.
        taken: How much of the lot, in its smallest unit.
        happened: When; what happened in the same second was before.
    """
    there, whole = _both(connection, code, source, happened)
    measure = known_lot(connection, source).opened.measure
    # Of what was received the contents are those of a litre or a kilogram.
    share = taken / (whole.volume_ul if measure is Measure.UL and whole.volume_ul else LITRE)
    return round(add(there, scaled(whole, share)).volume_ul)


def _both(
    connection: Connection, code: str, source: str, happened: When
) -> tuple[Contents, Contents]:
    """Return what was in a batch then, and what is in a lot."""
    # Each by itself, as all else asks of them, so that nothing is asked twice.
    batch, lot = (
        replayed(connection, [known_lot(connection, told).seq]).replay for told in (code, source)
    )
    there, at = Contents(), instant_text(happened.at)
    for item in batch.happenings(code):
        there = item.after if item.step.at <= at else there
    return there, lot.contents(source)
