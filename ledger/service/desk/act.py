"""The desk: one transaction in which one verb is read, checked and recorded.

Guarantees: every entry of the book passes through `Desk.record`: rules, order, hash and rows in
one transaction; all of a verb is recorded or none of it; none where others wrote since the rules
saw the book, and then the verb is judged anew. Refuses: what the rules find impossible,
and, without a reason, what should not have happened.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import UTC, datetime, tzinfo
from functools import wraps
from typing import Concatenate, ParamSpec, TypeVar

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Deviation, Draft, Entry, FactsT, Opened, When
from ledger.domain.entries.choices import LotType, Origin
from ledger.domain.lots.codes import clean_code, next_code, stem_for
from ledger.domain.lots.movements import movements
from ledger.domain.rules import Finding, Severity
from ledger.domain.rules.recheck import touched
from ledger.errors import MovedError, RefusedError, StorageError
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.clock import zone_of
from ledger.service.desk.foresight import Ahead, foretold
from ledger.service.desk.judged import Judged, judged
from ledger.service.desk.numbers import entry_number
from ledger.service.desk.outcome import stands
from ledger.service.desk.reader import Words
from ledger.service.desk.standing import shaken_by, stood_on
from ledger.service.desk.stops import departs
from ledger.service.desk.times import read_when
from ledger.store.engine.connections import Connection
from ledger.store.read import queries
from ledger.store.read.lots import codes_of_stem
from ledger.store.write import recorder
from ledger.store.write.details import Salt, new_salt
from ledger.store.write.recorder import Moved


@dataclass(slots=True)
class Desk:
    """A verb at work."""

    connection: Connection
    """The writing transaction."""
    now: datetime
    """The book's clock, read once."""
    how: How
    """Who writes, and how it is known."""
    zone: tzinfo
    """The zone of the house's clock."""
    words: Words
    """Reads the verb's words."""
    currency: str = ""
    """ISO 4217 code of the house's money."""
    salt: Salt = new_salt
    """Returns a salt for what stands beside an entry."""
    happened: When = field(init=False)
    """When it happened."""
    origin: Origin = field(init=False)
    """Where the entry comes from."""
    by: str | None = field(init=False)
    """Initials, in capitals."""
    reason: str | None = field(init=False)
    """Why, in words."""
    sheet: str | None = field(init=False)
    """Number of the paper sheet."""
    appended: list[Entry] = field(init=False, default_factory=list)
    """What it recorded so far; it stands once the transaction has committed."""

    def __post_init__(self) -> None:
        """Read who, when and where from."""
        here = When(self.now.astimezone(UTC).replace(microsecond=0), 0)
        self.happened = self.words.read(lambda: read_when(self.how.at, self.now, self.zone), here)
        told = self.how.origin or ("paper" if self.how.sheet else "bench")
        self.origin = self.words.needed(told, Origin, "origin")
        self.by = (self.how.by or "").strip().upper() or None
        self.reason = self.words.text_or_none(self.how.because, "reason")
        self.sheet = self.words.text_or_none(self.how.sheet, "sheet number")

    def open_code(self, asked: str | None, stem_words: str, prefix: str = "") -> str:
        """Return the code for a new lot: the maker's own if given, else the book's next."""
        if asked:
            return self.words.read(lambda: self._own_code(asked), "")
        stem = prefix + stem_for(stem_words)
        # Only where to begin: numbers were passed over, and a maker's own code may have the next.
        known = codes_of_stem(self.connection, f"{stem}-")
        return next_code(stem, known.count + 1, known.later.__contains__)

    def entry_named(self, text: str) -> Entry | None:
        """Return the entry that `text` numbers, or None when the book has none of that number."""
        number = self.words.read(lambda: entry_number(text), 0)
        self.words.done()
        return queries.entry(self.connection, number)

    def _own_code(self, asked: str) -> str:
        code = clean_code(asked)
        if queries.lot_by_code(self.connection, code):
            raise RefusedError(
                f"The code {code} belongs to a lot already.",
                "Give another code, or leave --code out and the book makes one.",
            )
        return code

    def record(
        self,
        facts: FactsT,
        lot: str | None = None,
        opens: tuple[str, LotType, Measure] | None = None,
        corrects: int | None = None,
        *,
        insists: bool = False,
    ) -> Recorded[FactsT]:
        """Check a draft against every rule and append it, with its deviations.

        Args:
            facts: What it says.
            lot: Code of the lot it is about.
            opens: Code, type and measure of the lot it opens.
            corrects: Number of the entry that it replaces or strikes.
            insists: Whether it is a release whatever stands in its way, where its reason is
                spoken for already by a hold that it ends.

        Raises:
            RefusedError: It cannot be true.
            ReasonNeededError: It should not have happened, or says why, and no reason is given.
            FindingError: A release has something in its way and no reason for it is given.
        """
        self.words.done()
        return self.append(self.draft(facts, lot, opens, corrects), insists=insists)

    def draft(
        self,
        facts: FactsT,
        lot: str | None = None,
        opens: tuple[str, LotType, Measure] | None = None,
        corrects: int | None = None,
    ) -> Draft[FactsT]:
        """Return a draft of facts by who is at the desk; as `record` has it."""
        return Draft(
            facts=facts,
            lot=lot or (opens[0] if opens else None),
            happened=self.happened,
            by=self.by,
            origin=self.origin,
            sheet=self.sheet,
            reason=self.reason,
            corrects=corrects,
            opens=Opened(*opens) if opens else None,
        )

    def append(self, draft: Draft[FactsT], *, insists: bool = False) -> Recorded[FactsT]:
        """Check and append a finished draft; as `record`."""
        return self.put(judged(self.connection, draft, self.now, insists=insists))

    def put(self, checked: Judged[FactsT]) -> Recorded[FactsT]:
        """Append a draft that was checked, with its deviations."""
        draft, scene = checked.draft, checked.scene
        old = scene.corrected
        moved = movements(draft, scene)
        codes = touched(old, replace(old, draft=draft, postings=moved[0])) if old else ()
        # Read before the correction is in the book, to tell afterwards what it broke.
        stood = stood_on(self.connection, old, codes, self.now) if old else None
        entry = self._put(draft, moved)
        remarks = tuple((note, "") for note in self.words.notes)
        remarks += tuple(
            f.told_of(entry.seq) for f in checked.findings if f.severity is Severity.REMARK
        )
        if stood:
            remarks += shaken_by(self.connection, entry, stood)
        return Recorded(
            entry=entry,
            code=draft.opens.code if draft.opens else None,
            remarks=remarks,
            deviations=tuple(self._deviation(entry, f) for f in checked.findings if departs(f)),
            draws_on=scene.sources,
        )

    def _deviation(self, entry: Entry, finding: Finding) -> Entry[Deviation]:
        draft = Draft(
            facts=Deviation(rule=finding.rule, text=finding.what, about=entry.seq),
            lot=entry.draft.lot,
            happened=entry.draft.happened,
            by=entry.draft.by,
            origin=entry.draft.origin,
            sheet=entry.draft.sheet,
            reason=entry.draft.reason,
        )
        # Past the rules, since it is what the book itself says of another entry.
        return self._put(draft, ((), None))

    @property
    def numbers(self) -> list[int]:
        """The numbers of what it recorded."""
        return [entry.seq for entry in self.appended]

    def _put(self, draft: Draft[FactsT], moved: Moved) -> Entry[FactsT]:
        entry = recorder.append(self.connection, draft, moved, self.now, self.salt)
        self.appended.append(entry)
        return entry


_UNTOLD = Ahead()
Said = ParamSpec("Said")
Told = TypeVar("Told")
Verb = Callable[Concatenate[Book, How, Said], Told]
"""What a person does: with a book, who does it and how, and its words."""


def act(verb: Verb[Said, Told]) -> Verb[Said, Told]:
    """Return a verb that, where others wrote while it was judged, looks and is judged anew.

    Then it takes its turn first, so that it is through the second time; and so do the next ones,
    as long as others write between them, since among many each would be judged twice.
    """

    @wraps(verb)
    def judged(book: Book, how: How, /, *args: Said.args, **words: Said.kwargs) -> Told:
        try:
            return verb(book, how, *args, **words)
        except MovedError:
            book.is_in_turn = True
            return verb(book, how, *args, **words)

    return judged


@contextmanager
def at_desk(book: Book, how: How, ahead: Ahead = _UNTOLD) -> Iterator[Desk]:
    """Open a desk: a writing transaction that commits when the verb is through.

    Args:
        book: The book.
        how: Who writes.
        ahead: What its words say ahead, so that a server is asked all at once.

    Raises:
        MovedError: Others wrote since it looked, without its turn; nothing is recorded.
        StorageError: It could not be recorded; or whether it was is not known, which is said.
    """
    desk, is_through = None, False
    try:
        with book.writing(foretold(book, how, ahead)) as connection:
            desk = desk_on(connection, book.now(connection), how)
            desk.salt = book.salt
            yield desk
            is_through = True
    except MovedError:
        raise
    except BaseException as error:
        # Only a commit that nobody answered for leaves open whether it was made.
        if desk is None or not (is_through and desk.appended):
            raise
        is_answer_lost = isinstance(error, StorageError)
        what = error.what if isinstance(error, StorageError) else "It was broken off."
        if not stands(book, desk.appended[-1], what):
            raise
        book.remember(desk.numbers)
        if not is_answer_lost:
            raise
    else:
        book.remember(desk.numbers)


def desk_on(connection: Connection, now: datetime, how: How) -> Desk:
    """Return a desk on an open writing transaction."""
    house = queries.house(connection)
    zone = zone_of(house)
    by = (how.by or "").strip().upper() or None
    # The house itself is entered before there is one.
    today = now.astimezone(zone).date()
    words = Words(connection, house.fluid_ounce if house else "US", by, today)
    return Desk(connection, now, how, zone, words, house.currency if house else "")
