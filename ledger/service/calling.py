"""Calls to those who hold goods of a recalled lot.

Guarantees: every call is an entry of the lot, however it ended; a name that nothing was sent to is
remarked on. Refuses: nothing beyond the rules.
"""

from dataclasses import replace

from ledger.domain.entries import Contact
from ledger.domain.entries.words import Reached
from ledger.service.book import Book, How, Recorded
from ledger.service.desk import at_desk
from ledger.service.recall_calls import NONE_LEFT
from ledger.service.tracing import trace_on
from ledger.store.engine import Connection

NOTHING = frozenset({"0", "none", "nothing"})
"""Words for nothing left; an amount is more than nothing, so the words of the call say it."""


def contact(
    book: Book,
    how: How,
    *,
    lot: str,
    party: str,
    reached: str,
    still_there: str | None = None,
    words: str | None = None,
) -> Recorded:
    """Record that somebody who holds goods of a lot was called."""
    with at_desk(book, how) as desk:
        read = desk.words
        said = read.text_or_none(words, "words")
        is_none = (still_there or "").strip().lower() in NOTHING
        facts = Contact(
            party=read.text(party, "name of who was called"),
            reached=read.needed(reached, Reached, "end of the call"),
            still_there=read.pieces(still_there) if still_there and not is_none else None,
            words=", ".join(part for part in (NONE_LEFT, said) if part) if is_none else said,
        )
        code = read.lot(lot)
        read.done()
        done = desk.record(facts, code)
        if _was_sent(desk.connection, code, facts.party):
            return done
        what = f"The book knows of nothing of {code}, or made of it, that went to {facts.party}."
        todo = f"Check the name: pottle recall {code} --drill lists who was sent some."
        return replace(done, remarks=(*done.remarks, (what, todo)))


def _was_sent(connection: Connection, code: str, party: str) -> bool:
    return any(item.party == party for item in trace_on(connection, code, back=False).holders)
