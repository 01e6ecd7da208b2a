"""Answer: what became of a complaint, and who told the customer when.

Guarantees: an answer stands with the lot that was complained of; who told the customer without
saying when did it on the day of the answer. Refuses: answers to what is no complaint, and, without
a reason, the closing of one of which the customer was never told.
"""

from datetime import date

from ledger.domain.entries import Answer, Complaint, Entry, is_of
from ledger.domain.entries.choices import Outcome
from ledger.domain.masters.parties import is_named
from ledger.errors import InputError, ReasonNeededError, RefusedError
from ledger.service.desk.act import Desk, act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.service.desk.times import read_when
from ledger.store.engine.connections import Connection
from ledger.store.read import queries


@act
def answer(
    book: Book,
    how: How,
    *,
    complaint: str,
    outcome: str,
    told_by: str | None = None,
    told_on: str | None = None,
    closed: str | None = None,
    words: str | None = None,
) -> Recorded[Answer]:
    """Say what became of a complaint; told to the customer, it is closed.

    Args:
        book: The book.
        how: Who answers.
        complaint: Number of the complaint.
        outcome: What became of it.
        told_by: Initials of who told the customer; with `told_on` alone, who writes.
        told_on: The day on which the customer was told.
        closed: Anything closes it also where the customer was not told.
        words: What was found, or said.

    Raises:
        InputError: There is no complaint of that number.
        RefusedError: The customer was told before there was a complaint, or is yet to be told.
        ReasonNeededError: It is closed, the customer was not told, and no reason is given.
    """
    with at_desk(book, how, Ahead(about=complaint)) as desk:
        read = desk.words
        about = read.read(lambda: _complaint(desk.connection, complaint), None)
        by = (told_by or "").strip().upper() or (desk.by if told_on else None)
        facts = Answer(
            complaint=about.stands_for if about else 1,
            outcome=read.needed(outcome, Outcome, "outcome"),
            told_by=by,
            told_on=read.read(lambda: _told_on(desk, about, told_on), None) if by else None,
            is_closed=True if closed and not by else None,
            words=read.text_or_none(words, "words"),
        )
        read.done()
        if about and facts.is_closed and not desk.reason and is_named(about.facts.party):
            raise ReasonNeededError(
                f"Complaint {about.stands_for} is to be closed, and {about.facts.party} was not "
                "told what became of it.",
                "Say who told them and when, with --told-by and --told; or why nobody did, with "
                "--because.",
            )
        return desk.record(facts, about.draft.lot if about else None)


def _complaint(connection: Connection, text: str) -> Entry[Complaint]:
    number = text.strip()
    # No book has so many entries, and no engine finds larger numbers.
    found = queries.entry(connection, int(number)) if _is_number(number) else None
    if found is None or not is_of(found, Complaint):
        raise InputError(
            f'"{text}" is not the number of a complaint.',
            "pottle complaints lists them with their numbers.",
        )
    return found


def _is_number(text: str) -> bool:
    return text.isascii() and text.isdecimal() and len(text) <= 18


def _told_on(desk: Desk, about: Entry[Complaint] | None, text: str | None) -> date:
    """Return the day on which a customer was told; the day of the answer where none is given."""
    told = read_when(text, desk.now, desk.zone).local().date() if text else None
    day = told or desk.happened.local().date()
    made = about.draft.happened.local().date() if about else day
    if day > desk.now.astimezone(desk.zone).date():
        raise RefusedError(
            f"The customer cannot have been told on {day}: that day is still to come.",
            "Give the day on which they were told, or leave --told out until they are.",
        )
    if day < made:
        raise RefusedError(
            f"The customer cannot have been told on {day}: the complaint is of {made}.",
            "Check the day and the number of the complaint; pottle complaints lists them.",
        )
    return day
