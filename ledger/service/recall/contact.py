"""Calls to those who hold goods of a recalled lot.

Guarantees: every call is an entry of the lot, however it ended; a name that nothing was sent to is
remarked on, and so are more bottles than went there. Refuses: what is left by the word of nobody.
"""

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure, show
from ledger.domain.entries import Contact
from ledger.domain.entries.choices import Reached
from ledger.errors import InputError
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.service.desk.reader import Words
from ledger.service.lots.reach import reach_on
from ledger.service.lots.trace import Holder, holders_on
from ledger.service.recall.calls import may_have

NOTHING = frozenset({"none", "nothing"})
"""Words that are said for 0."""


@act
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
    with at_desk(book, how, Ahead(lot, is_packed=True, is_traced=True, party=party)) as desk:
        facts = _read(desk.words, party, reached, still_there, words)
        code = desk.words.lot(lot)
        desk.words.done()
        # Before it is in the book, which changes nothing of it.
        holders = holders_on(desk.connection, reach_on(desk.connection, code, back=False))
        done = desk.record(facts, code)
        remarks = _remarks(holders, code, done.seq, facts)
        return replace(done, remarks=(*done.remarks, *remarks))


def _read(
    read: Words, party: str, reached: str, still_there: str | None, words: str | None
) -> Contact:
    told = "0" if (still_there or "").strip().lower() in NOTHING else still_there
    facts = Contact(
        party=read.text(party, "name of who was called"),
        reached=read.needed(reached, Reached, "end of the call"),
        still_there=read.pieces(told, may_be_nothing=True) if told else None,
        words=read.text_or_none(words, "words"),
    )
    if still_there and facts.reached is Reached.NO_ANSWER:
        error = InputError(
            "Nobody answered, so nobody can have said how much is left.",
            "Leave --still out, or say how they were reached: --reached spoken or left-word.",
        )
        read.errors.append(error)
    return facts


def _remarks(
    holders: Sequence[Holder], code: str, seq: int, facts: Contact
) -> Iterator[tuple[str, str]]:
    """Yield what does not agree with what the book says was sent, with what to do."""
    theirs = [holder for holder in holders if holder.party == facts.party]
    if not theirs:
        what = f"The book knows of nothing of {code}, or made of it, that went to {facts.party}."
        yield what, f"Check the name: pottle recall {code} --drill lists who was sent some."
    # Without the sizes of bottles, since only their number is compared.
    pieces, _ = may_have(theirs, {})
    told = facts.still_there
    if theirs and told and told.measure is Measure.UEACH and told.amount > pieces:
        most, said = show(pieces, Measure.UEACH), show(told.amount, Measure.UEACH)
        what = f"By the book {facts.party} can have at most {most}, and the count there is {said}."
        yield what, f"If it was mistyped: pottle correct {seq} --set still_there=NUMBER"
