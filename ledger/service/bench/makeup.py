"""Make up: a batch is brought to a volume with another lot.

Guarantees: what was used is reckoned only where what is in both lots says it.
"""

from ledger.domain.amounts.quantity import Measure, Quantity, show
from ledger.domain.entries import MakeUp
from ledger.errors import RefusedError
from ledger.service.account.made_up import used_to_make_up
from ledger.service.account.state import lot_state
from ledger.service.desk.act import Desk, act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.store.read.queries import Moment


@act
def makeup(
    book: Book,
    how: How,
    *,
    lot: str,
    volume: str,
    source: str,
    used: str | None = None,
    temp: str | None = None,
) -> Recorded:
    """Make a batch up to a volume with another lot."""
    with at_desk(book, how, Ahead(lot, (source,))) as desk:
        words = desk.words
        code, to = words.lot(lot), words.amount(volume)
        source_code = words.source(source)
        took = words.amount_or_none(used)
        # What was used is reckoned from the lot, so its name must have been read.
        words.done()
        facts = MakeUp(
            volume=to,
            source=source_code,
            used=took or _used(desk, code, source_code, to),
            temp_mdegc=words.scaled(temp, 1000, "°C", "temperature"),
        )
        return desk.record(facts, code)


def _used(desk: Desk, code: str, source: str, to: Quantity) -> Quantity:
    state = lot_state(desk.connection, code, Moment(desk.happened.at), is_whole=False)
    if state.solids_mg:
        raise RefusedError(
            f"{show(state.solids_mg, Measure.MG)} of solids went into {code} since its volume "
            "was last measured, so the book cannot tell how much it took.",
            "Say how much you used with --used.",
        )
    by_sums = used_to_make_up(desk.connection, code, source, to.amount, desk.happened)
    needed = max(to.amount - state.on_hand_then if by_sums is None else by_sums, 1)
    return Quantity(needed, Measure.UL, show(needed, Measure.UL))
