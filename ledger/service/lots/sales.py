"""What went to customers and came back, and other acts of a period.

Guarantees: entries in force only, by when they happened, then by number; a day is one of the clock
that the entry was written by. Refuses: a period that ends before it begins.
"""

from datetime import date

from msgspec import Struct

from ledger.domain.entries import Bottle, Entry, FactsT, Move
from ledger.domain.entries.choices import MoveAs
from ledger.domain.lots.lot import Lot
from ledger.errors import InputError, LedgerError, attempt, together
from ledger.service.desk.book import Book
from ledger.service.desk.times import read_day
from ledger.store.read import queries
from ledger.store.read.lots import lots_by_number

SOLD = (MoveAs.SALE, MoveAs.ON_RETURN, MoveAs.RETURNED, MoveAs.SAMPLE)
"""Ways of goods to customers, and back."""


class Sale(Struct, frozen=True):
    """Goods that went to somebody, or came back."""

    lot: Lot
    """The lot."""
    party: str | None
    """Who."""
    moved_as: MoveAs
    """How it went."""
    amount: int
    """How much, in the lot's measure."""
    bottle_ul: int | None
    """How large a bottle of it is; None where it is no lot of bottles."""
    on: date
    """The day."""
    document: str | None
    """Number of the delivery note."""
    entry: int
    """Number of the entry."""

    @property
    def is_back(self) -> bool:
        """Whether it came back."""
        return self.moved_as is MoveAs.RETURNED


class Period(Struct, frozen=True):
    """Days from one to another, both among them."""

    first: date = date.min
    """The first."""
    last: date = date.max
    """The last."""

    def holds(self, entry: Entry) -> bool:
        """Return whether an entry happened on one of these days."""
        return self.first <= entry.draft.happened.local().date() <= self.last


def read_period(first: str | None, last: str | None) -> Period:
    """Return the period from one day to another; None: without an end on that side.

    Raises:
        InputError: A day cannot be read, or the last is before the first.
    """
    wrong = list[LedgerError]()
    since = attempt(wrong, lambda: read_day(first), date.min) if first else date.min
    until = attempt(wrong, lambda: read_day(last), date.max) if last else date.max
    if wrong:
        raise together(wrong)
    if until < since:
        raise InputError(
            f"The period would end on {until}, before it begins on {since}.",
            "Give --from the earlier day.",
        )
    return Period(since, until)


def acts_of(book: Book, kind: type[FactsT], period: Period) -> tuple[Entry[FactsT], ...]:
    """Return the entries of a kind that happened in a period, by when they happened."""
    with book.reading() as connection:
        found = queries.entries_of_kind(connection, kind)
    return tuple(sorted(filter(period.holds, found), key=lambda entry: entry.position))


def sales(book: Book, period: Period, party: str | None = None) -> tuple[Sale, ...]:
    """Return what went to customers and came back in a period, of one customer or of all."""
    moves = [
        entry
        for entry in acts_of(book, Move, period)
        if entry.facts.moved_as in SOLD and (party is None or entry.facts.party == party)
    ]
    with book.reading() as connection:
        codes = {code for entry in moves if (code := entry.draft.lot)}
        rows = {code: queries.lot_by_code(connection, code) for code in sorted(codes)}
        numbers = {code: row.seq for code, row in rows.items() if row}
        lots = lots_by_number(connection, sorted(numbers.values()))
        sizes = {
            entry.draft.lot: entry.facts.size.amount
            for entry in queries.entries_of_kind(connection, Bottle)
        }
    return tuple(
        Sale(
            lot=lots[numbers[code]],
            party=entry.facts.party,
            moved_as=entry.facts.moved_as,
            amount=entry.facts.amount.amount,
            bottle_ul=sizes.get(code),
            on=entry.draft.happened.local().date(),
            document=entry.facts.document,
            entry=entry.seq,
        )
        for entry in moves
        if (code := entry.draft.lot) in numbers
    )
