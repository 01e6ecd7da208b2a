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
from ledger.service.account.volumes import Volume, volumes
from ledger.store.engine.abreast import abreast
from ledger.store.engine.acts import foresee
from ledger.store.engine.connections import Connection
from ledger.store.engine.foretold import Foreseen
from ledger.store.read import amounts, queries, reach, walk
from ledger.store.read.queries import LotRow, Moment

_UNMEASURED = (Volume(0, 0, is_reckoned=False),) * 2


def lot_state(
    connection: Connection,
    code: str,
    moment: Moment | None = None,
    skip: int = 0,
    is_whole: bool = True,
    is_measured: bool = True,
) -> LotState:
    """Return what the book knows of a lot.

    Args:
        connection: A connection in a transaction.
        code: The lot's whole code.
        moment: For what was there just before it; None for now.
        skip: A chain of corrections to leave out.
        is_whole: Whether to walk to what it was made of, for dates and verdicts.
        is_measured: Whether to reckon what it holds; else that is told as nothing.
    """
    row = known_lot(connection, code)
    is_bought = row.opened.lot_type is LotType.RECEIVED  # and so made of nothing that is here
    asked = (is_whole, is_measured)
    foresee(connection, lambda foreseen: _ahead(foreseen, row, moment, skip, asked))
    entries = queries.entries_of_lot(connection, row.seq, skip)
    held, behind, dates, material, bulk = abreast(
        connection,
        lambda: _held(connection, row, entries, moment, skip) if is_measured else _UNMEASURED,
        lambda: walk.behind(connection, row.seq) if is_whole and not is_bought else [],
        lambda: dates_of(connection, [row.seq])[row.seq] if is_whole else Dates(),
        lambda: _material_of(connection, row, entries),
        lambda: _bulk_of(connection, row, is_measured),
    )
    barred = [lot.code for lot in behind if lot.verdict in BARRING and lot.lot != row.seq]
    return LotState(
        seq=row.seq,
        opened=row.opened,
        entries=entries,
        on_hand=held[1].amount,
        on_hand_then=held[0].amount,
        solids_mg=held[0].solids_mg,
        is_reckoned=held[1].is_reckoned,
        was_reckoned=held[0].is_reckoned,
        material=material,
        dates=dates,
        barred_inputs=_in_it(connection, row, barred),
        made_from=frozenset((row.seq, *(lot.lot for lot in behind))),
        bulk=bulk,
    )


def _ahead(
    foreseen: Foreseen, row: LotRow, moment: Moment | None, skip: int, asked: tuple[bool, bool]
) -> None:
    """Foretell what is asked of a lot by its number: whether all of it, and what it holds."""
    is_whole, is_measured = asked
    foreseen.asks(queries.entries_of_lot, row.seq, skip)
    if not is_measured:
        pass
    elif moment:
        foreseen.asks(amounts.held_then_and_now, row.seq, moment, skip)
    else:
        foreseen.asks(amounts.held, row.seq, None, skip)
    if row.opened.lot_type is LotType.MADE and is_measured:
        foreseen.asks(walk.back, row.seq)
    if row.opened.lot_type is LotType.PACKED:
        foreseen.asks(queries.chain, row.seq)
    if is_whole:
        foreseen.asks(reach.made_of, [row.seq])
        if row.opened.lot_type is not LotType.RECEIVED:
            foreseen.asks(walk.behind, row.seq)


def _held(
    connection: Connection,
    row: LotRow,
    entries: tuple[Entry, ...],
    moment: Moment | None,
    skip: int,
) -> tuple[Volume, Volume]:
    """Return what a lot holds just before a moment, and now."""
    if moment:
        summed = amounts.held_then_and_now(connection, row.seq, moment, skip)
    else:
        now = amounts.held(connection, row.seq, skip=skip)
        summed = now, now
    return volumes(connection, row, entries, summed, moment, skip)


def _material_of(
    connection: Connection, row: LotRow, entries: tuple[Entry, ...]
) -> Material | None:
    if row.opened.lot_type is not LotType.RECEIVED:
        return None
    code = next((receipt.facts.material for receipt in entries_of(entries, Receipt)), None)
    return queries.material(connection, code) if code else None


def _bulk_of(connection: Connection, row: LotRow, is_measured: bool) -> LotState | None:
    if row.opened.lot_type is not LotType.PACKED:
        return None
    # By its whole chain: rules still ask what is in bottles whose filling is corrected or struck.
    chain = (entry for entry, _ in queries.chain(connection, row.seq))
    fillings = list(entries_of(chain, Bottle))
    if not fillings:
        return None
    source = fillings[-1].facts.source
    return lot_state(connection, source, is_whole=False, is_measured=is_measured)


def _in_it(connection: Connection, row: LotRow, codes: list[str]) -> tuple[str, ...]:
    """Return those of the lots behind one of which anything can be in it."""
    if not codes:
        return ()
    found = shares_behind(connection, row).shares.lots
    return tuple(code for code in codes if code in found)
