"""Recalling a lot: all that is made of it held in one act, and the recall closed with its cause.

Guarantees: the lot and every lot made of it are recalled in one transaction or none is. Refuses: a
recall without a reason, the closing of one that is not open, and, without a reason, of one of which
bottles or bulk still stand.
"""

from collections.abc import Iterator

from ledger.domain.amounts.quantity import show
from ledger.domain.entries import Closing, Judge
from ledger.domain.entries.choices import Verdict
from ledger.domain.lots.lot import Lot, Status
from ledger.errors import LedgerError, ReasonNeededError, RefusedError, together
from ledger.service.account.codes import known_lot
from ledger.service.desk.act import Desk, act, at_desk
from ledger.service.desk.book import Book, How, Recorded, Tick
from ledger.service.desk.foresight import Ahead
from ledger.service.desk.judged import Judged, side_by_side
from ledger.service.lots.reach import Reach, reach_on
from ledger.service.lots.trace import met_on
from ledger.service.recall.calls import ToCall
from ledger.service.recall.standing import Recall, course, recall_on
from ledger.store.engine.acts import foresee
from ledger.store.engine.foretold import Foreseen
from ledger.store.read import queries
from ledger.store.read.lots import foresee_lots


@act
def recall(book: Book, how: How, tick: Tick = lambda _done, _total: None, *, lot: str) -> Recorded:
    """Recall a lot and all that is made of it; lots that are recalled already stay as they are.

    Args:
        book: The book.
        how: Who recalls it, and why.
        tick: Told how many of how many lots are held.
        lot: The lot.

    Returns:
        What was recorded of the lot itself, or of the first that was not recalled yet.

    Raises:
        ReasonNeededError: No reason is given.
        RefusedError: A lot cannot be recalled so, or all of them are; nothing is recorded.
    """
    with at_desk(book, how, Ahead(lot, is_packed=True, is_traced=True)) as desk:
        code = desk.words.lot(lot)
        desk.words.done()
        reach = reach_on(desk.connection, code, back=False)
        foresee(desk.connection, lambda foreseen: _ahead(foreseen, reach))
        lots = met_on(desk.connection, reach)
        waiting = [brief for brief in lots if brief.status not in (Status.RECALLED, Status.STRUCK)]
        if not waiting:
            raise RefusedError(
                f"{code} and all that is made of it are recalled already, or struck out.",
                f"pottle recall {code} shows how far the recall is.",
            )
        if not desk.reason:
            held = "1 lot, and its" if len(waiting) == 1 else f"{len(waiting)} lots, and their"
            raise ReasonNeededError(
                f"Recalling {code} holds {held} holders are to be called.",
                "Say why with --because, or try it first with --drill.",
            )
        return _held(desk, waiting, tick)[0]


def _ahead(foreseen: Foreseen, reach: Reach) -> None:
    """Foretell what is asked of the lots that are met, and what the rules ask of each."""
    foresee_lots(foreseen, list(reach.lots.values()))
    for code, number in reach.lots.items():
        foreseen.asks(queries.lot_by_code, code)
        foreseen.asks(queries.entries_of_lot, number)
        foreseen.asks(queries.chain, number)


def _held(desk: Desk, lots: list[Lot], tick: Tick) -> list[Recorded]:
    """Recall lots, all of them or none."""
    drafts = [desk.draft(Judge(Verdict.RECALL), brief.code) for brief in lots]
    found = side_by_side(desk.connection, drafts, desk.now)
    # All that stands in the way is told; then nothing at all is recorded.
    if errors := [error for error in found if isinstance(error, LedgerError)]:
        raise together(errors)
    done: list[Recorded] = []
    for judged in found:
        if isinstance(judged, Judged):
            done.append(desk.put(judged))
            tick(len(done), len(lots))
    return done


@act
def close_recall(book: Book, how: How, *, lot: str, cause: str) -> Recorded:
    """Close the recall of a lot with its cause.

    Raises:
        RefusedError: The lot is not recalled, or its recall is closed.
        ReasonNeededError: Some of it stands here, or with people who were not spoken to.
    """
    # With a reason it is closed whatever is open of it still.
    with at_desk(book, how, Ahead(lot, is_packed=True, is_traced=not how.because)) as desk:
        read = desk.words
        facts, code = Closing(read.text(cause, "cause")), read.lot(lot)
        read.done()
        begun, closed = course(desk.connection, known_lot(desk.connection, code).seq)
        if begun is None or closed:
            why = "its recall is closed already" if closed else "it is not recalled"
            raise RefusedError(
                f"There is no open recall of {code} to close: {why}.",
                f"pottle lot {code} shows what was done.",
            )
        if not desk.reason and (open_still := list(_still_open(recall_on(desk.connection, code)))):
            raise ReasonNeededError.of(open_still)
        return desk.record(facts, code)


def _still_open(found: Recall) -> Iterator[tuple[str, str]]:
    """Yield what is not done yet in a recall that is to be closed, with what to do."""
    here = [
        item.brief for item in found.lots if item.brief.on_hand > 0 and _is_recalled(item.brief)
    ]
    if here:
        told = ", ".join(f"{show(lot.on_hand, lot.measure)} of {lot.code}" for lot in here)
        yield (
            f"Recalled goods still stand here: {told}.",
            f"Write what becomes of them, such as: pottle send {here[0].code} AMOUNT --as destroyed"
            "; or close it all the same and say why with --because.",
        )
    if names := [call.name or "not named" for call in found.to_call if _is_open(call)]:
        yield (
            f"These may still have some and were not spoken to: {', '.join(names)}.",
            f'Call them: pottle contact {found.lot.code} "WHO" --reached spoken --still COUNT; or '
            "say with --because why the recall is closed all the same.",
        )


def _is_recalled(lot: Lot) -> bool:
    # What stands open is what was recalled; a lot released again since is no part of it.
    return lot.status is Status.RECALLED


def _is_open(call: ToCall) -> bool:
    return not call.is_reached and bool(call.pieces or call.volume_ul)
