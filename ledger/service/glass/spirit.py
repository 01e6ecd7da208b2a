"""The spirit account of a period, over the whole book.

Guarantees: every lot that holds alcohol is in it, extracts as well as spirit; lots of spirit
without a strength are named; an entry counts on the day of the clock it was written by, whatever
the house's clock is now. Refuses: a period that ends before it begins.
"""

from collections.abc import Mapping
from datetime import date, timedelta

from msgspec import Struct

from ledger.domain.lots.steps import Step
from ledger.errors import InputError, LedgerError, attempt, together
from ledger.science.contents.received import ReceivedLot, holds_alcohol
from ledger.science.contents.replay import Replay
from ledger.science.contents.spirit import Flow, SpiritAccount, account, made_flows, spirit_flows
from ledger.service.account.replay import received_lot
from ledger.service.desk.book import Book
from ledger.service.desk.clock import today_on
from ledger.service.desk.times import read_day
from ledger.store.read.lots import all_lots
from ledger.store.read.received import received
from ledger.store.read.steps import steps_of


class SpiritReport(Struct, frozen=True):
    """A spirit account with its period."""

    first: date
    """Its first day on the house's clock."""
    last: date
    """Its last day."""
    account: SpiritAccount
    """The account."""
    names: dict[str, str]
    """Names of the spirit lots by code."""
    unknown: tuple[str, ...]
    """Codes of lots of spirit whose strength is not in the book; they count as nothing."""


def spirit_account(book: Book, first: str | None, last: str | None) -> SpiritReport:
    """Return the spirit account from one day to another, both counted.

    Args:
        book: The book.
        first: The first day; None: the first of the year of the last.
        last: The last day; None: today.

    Raises:
        InputError: A day cannot be read, or the last is before the first.
    """
    with book.reading() as connection:
        since, until = _period(first, last, today_on(connection, book.clock()))
        ids = all_lots(connection)
        known = {code: received_lot(row) for code, row in received(connection, ids).items()}
        steps = steps_of(connection, ids, of_bought=True).steps
    spirits = {code: lot for code, lot in known.items() if holds_alcohol(lot)}
    ends = {code: _finished(told) for code, told in steps.items() if code not in known}
    return SpiritReport(
        since,
        until,
        account(
            _flows(known, spirits, steps),
            (_midnight(since), _midnight(until + timedelta(days=1))),
            frozenset(spirits),
            {code: end for code, end in ends.items() if end},
        ),
        {code: lot.name for code, lot in spirits.items()},
        tuple(sorted(code for code, lot in spirits.items() if lot.abv is None)),
    )


def _period(first: str | None, last: str | None, today: date) -> tuple[date, date]:
    """Return the first and the last day of the period asked for."""
    wrong = list[LedgerError]()
    until = attempt(wrong, lambda: read_day(last), today) if last else today
    since = attempt(wrong, lambda: read_day(first), today) if first else date(until.year, 1, 1)
    if wrong:
        raise together(wrong)
    if until < since:
        raise InputError(
            f"The period would end on {until}, before it begins on {since}.",
            "Give --from the earlier day.",
        )
    return since, until


def _flows(
    known: Mapping[str, ReceivedLot],
    spirits: Mapping[str, ReceivedLot],
    steps: Mapping[str, tuple[Step, ...]],
) -> list[Flow]:
    """Return what moved of alcohol, in lots of spirit and in what was made here."""
    made = {code: told for code, told in steps.items() if code not in known}
    replay = Replay(made, known)
    return [
        *(flow for code, lot in spirits.items() for flow in spirit_flows(lot, steps[code])),
        *(flow for code in made for flow in made_flows(code, replay.happenings(code))),
    ]


def _finished(steps: tuple[Step, ...]) -> str:
    """Return when a lot was finished; one that begins by a filling or a rinse is so at once."""
    if steps and steps[0].kind in ("bottle", "rinse"):
        return steps[0].clock
    return next((step.clock for step in reversed(steps) if step.kind == "finish"), "")


def _midnight(day: date) -> str:
    return f"{day}T00:00:00"
