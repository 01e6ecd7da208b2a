"""The state of a lot: what the book knows of it, now or at a moment.

Guarantees: all of it is read in one transaction.
"""

from ledger.domain.entries import Bottle, Entry, Material, Receipt, entries_of
from ledger.domain.entries.choices import LotType
from ledger.domain.lots.dates import Dates
from ledger.domain.lots.lot import BARRING
from ledger.domain.lots.state import LotState
from ledger.service.account.codes import known_lot
from ledger.service.account.dates import dates_of
from ledger.service.account.shares import shares_behind
from ledger.service.account.volumes import volumes
from ledger.store.engine.connections import Connection
from ledger.store.read import amounts, queries, walk
from ledger.store.read.queries import LotRow, Moment


def lot_state(
    connection: Connection,
    code: str,
    moment: Moment | None = None,
    skip: int = 0,
    is_whole: bool = True,
) -> LotState:
    """Return what the book knows of a lot.

    Args:
        connection: A connection in a transaction.
        code: The lot's whole code.
        moment: For what was there just before it; None for now.
        skip: A chain of corrections to leave out.
        is_whole: Whether to walk to what it was made of, for dates and verdicts.
    """
    row = known_lot(connection, code)
    entries = queries.entries_of_lot(connection, row.seq, skip)
    if moment:
        then, now = amounts.held_then_and_now(connection, row.seq, moment, skip)
    else:
        then = now = amounts.held(connection, row.seq, skip=skip)
    held = volumes(connection, row, entries, (then, now), moment, skip)
    is_bought = row.opened.lot_type is LotType.RECEIVED  # and so made of nothing that is here
    behind = walk.behind(connection, row.seq) if is_whole and not is_bought else []
    barred = [lot.code for lot in behind if lot.verdict in BARRING and lot.lot != row.seq]
    dates = dates_of(connection, [row.seq])[row.seq] if is_whole else Dates()
    return LotState(
        seq=row.seq,
        opened=row.opened,
        entries=entries,
        on_hand=held[1].amount,
        on_hand_then=held[0].amount,
        solids_mg=held[0].solids_mg,
        is_reckoned=held[1].is_reckoned,
        was_reckoned=held[0].is_reckoned,
        material=_material_of(connection, row, entries),
        dates=dates,
        barred_inputs=_in_it(connection, row, barred),
        made_from=frozenset((row.seq, *(lot.lot for lot in behind))),
        bulk=_bulk_of(connection, row),
    )


def _material_of(
    connection: Connection, row: LotRow, entries: tuple[Entry, ...]
) -> Material | None:
    if row.opened.lot_type is not LotType.RECEIVED:
        return None
    code = next((receipt.facts.material for receipt in entries_of(entries, Receipt)), None)
    return queries.material(connection, code) if code else None


def _bulk_of(connection: Connection, row: LotRow) -> LotState | None:
    if row.opened.lot_type is not LotType.PACKED:
        return None
    # By its whole chain: rules still ask what is in bottles whose filling is corrected or struck.
    chain = (entry for entry, _ in queries.chain(connection, row.seq))
    fillings = list(entries_of(chain, Bottle))
    return lot_state(connection, fillings[-1].facts.source, is_whole=False) if fillings else None


def _in_it(connection: Connection, row: LotRow, codes: list[str]) -> tuple[str, ...]:
    """Return those of the lots behind one of which anything can be in it."""
    if not codes:
        return ()
    found = shares_behind(connection, row).shares.lots
    return tuple(code for code in codes if code in found)
