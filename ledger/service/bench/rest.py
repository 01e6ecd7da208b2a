"""Rest: begun, ended, or told whole.

Guarantees: a rest that is ended is the one that goes on; one that is told late is filed at its end,
or where it began while it goes on, so that it stands among the acts of its time.
"""

from datetime import datetime

from ledger.domain.entries import Rest
from ledger.domain.entries.choices import RestFor
from ledger.domain.lots.state import open_rest
from ledger.errors import RefusedError
from ledger.service.account.state import lot_state
from ledger.service.desk.act import Desk, act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.service.desk.times import read_when


@act
def rest(
    book: Book,
    how: How,
    *,
    lot: str,
    purpose: str | None = None,
    ended: str | None = None,
    started: str | None = None,
    until: str | None = None,
    temp: str | None = None,
    shaken: str | None = None,
    vessel: str | None = None,
) -> Recorded:
    """Begin a rest, end the one that goes on, or tell a whole one at once."""
    with at_desk(book, how, Ahead(lot)) as desk:
        words = desk.words
        code = words.lot(lot)
        # Which rest ends is looked up in the lot, so its name must have been read.
        words.done()
        began, for_, start_at, end_at = _span(desk, code, purpose, ended, started, until)
        if (late := until or started) and not (ended or how.at):
            desk.happened = words.read(lambda: read_when(late, desk.now, desk.zone), desk.happened)
        facts = Rest(
            purpose=for_,
            started_at=start_at,
            ended_at=end_at,
            began=began,
            temp_mdegc=words.scaled(temp, 1000, "°C", "temperature"),
            times_shaken=words.whole(shaken, "number of times"),
            vessel=words.text_or_none(vessel, "vessel"),
        )
        return desk.record(facts, code)


def _span(
    desk: Desk,
    code: str,
    purpose: str | None,
    ended: str | None,
    started: str | None,
    until: str | None,
) -> tuple[int | None, RestFor, datetime, datetime | None]:
    words, here = desk.words, desk.happened.at
    if ended:
        going_on = open_rest(lot_state(desk.connection, code, is_whole=False))
        if going_on is None:
            raise RefusedError(
                f"{code} is not resting, so no rest can end.",
                f"Begin one with: pottle rest {code} --for macerate",
            )
        facts = going_on.facts
        return going_on.stands_for, facts.purpose, facts.started_at, here
    for_ = words.needed(purpose, RestFor, "purpose of the rest")
    begin = (
        words.read(lambda: read_when(started, desk.now, desk.zone).at, here) if started else here
    )
    if until is None:
        return None, for_, begin, None
    return None, for_, begin, words.read(lambda: read_when(until, desk.now, desk.zone).at, here)
