"""What every entry has, whatever its kind: number, times, people, and the movements it makes.

Guarantees: an `Entry` is complete and frozen; a `Draft` is one before the book gave it a number.
Refuses: entries without a time, and times without the offset they were written in.
"""

from collections.abc import Iterable, Iterator
from datetime import UTC, datetime, timedelta, timezone
from typing import ClassVar, Generic, TypeGuard

from msgspec import Struct
from typing_extensions import TypeVar

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import LotType, Origin, Place, Precision


class Facts(Struct, frozen=True):
    """Base of the facts of one kind of entry."""

    KIND: ClassVar[str] = ""


FactsT = TypeVar("FactsT", bound=Facts)
FactsOf = TypeVar("FactsOf", bound=Facts, default=Facts, covariant=True)
"""The facts of an entry; where nothing is said, of any kind."""


class When(Struct, frozen=True):
    """A moment as a person knows it."""

    at: datetime
    """The instant in UTC, whole seconds."""
    offset_min: int
    """Minutes east of UTC of the clock it was written by."""
    precision: Precision = Precision.EXACT
    """How exactly it is known."""

    def local(self) -> datetime:
        """Return the instant on the clock it was written by.

        >>> When(datetime(2026, 3, 2, 9, 0, tzinfo=UTC), 60).local().isoformat()
        '2026-03-02T10:00:00+01:00'
        """
        return self.at.astimezone(timezone(timedelta(minutes=self.offset_min)))


class Posting(Struct, frozen=True):
    """One movement of material, from a lot or the outside to a lot or the outside.

    What leaves is counted in the measure of the lot it leaves, what arrives in the measure of the
    lot it arrives in: 3.75 L leave a syrup and 15 bottles arrive.
    """

    source: str | None
    """Code of the lot it left; None when it came from `place`."""
    target: str | None
    """Code of the lot it went to; None when it went to `place`."""
    place: Place | None
    """The outside end, when one end is no lot."""
    taken: int
    """What left, in the source's measure (the target's, from outside); 0: carried, not measured."""
    given: int
    """What it adds to the target's amount on hand; 0 for what is counted only where it left."""


class Level(Struct, frozen=True):
    """A measured amount: from here on a lot holds exactly this."""

    lot: str
    """Code of the lot."""
    amount: int
    """What was measured, in the lot's measure."""


class Opened(Struct, frozen=True):
    """A lot that an entry opens."""

    code: str
    """The lot's code."""
    lot_type: LotType
    """How it came into the book."""
    measure: Measure
    """In what it is counted."""


class Draft(Struct, Generic[FactsOf], frozen=True):
    """An entry that has not been recorded yet."""

    facts: FactsOf
    """What it says."""
    lot: str | None
    """Code of the lot it is about, if it is about one."""
    happened: When
    """When it happened."""
    by: str | None
    """Initials of who did it; None only for the house's first entry."""
    origin: Origin = Origin.BENCH
    """Where it came from."""
    sheet: str | None = None
    """Number of the paper sheet it was copied from."""
    reason: str | None = None
    """Why, where a reason was asked for."""
    corrects: int | None = None
    """Number of the entry in force that it replaces or strikes."""
    opens: Opened | None = None
    """The lot it opens."""


class Entry(Struct, Generic[FactsOf], frozen=True):
    """An entry of the book."""

    seq: int
    """Its number: 1 for the first, no gaps."""
    draft: Draft[FactsOf]
    """What was entered."""
    recorded_at: datetime
    """When the book took it, UTC, whole seconds."""
    stands_for: int
    """Number of the first entry of its chain of corrections; its own when it corrects none."""
    postings: tuple[Posting, ...] = ()
    """The movements it makes."""
    level: Level | None = None
    """The measured amount it states."""

    @property
    def facts(self) -> FactsOf:
        """What it says."""
        return self.draft.facts

    @property
    def kind(self) -> str:
        """The kind's name."""
        return self.facts.KIND

    @property
    def is_late(self) -> bool:
        """Whether it was written more than a day after it happened."""
        return self.recorded_at - self.draft.happened.at > timedelta(days=1)

    @property
    def position(self) -> tuple[datetime, int]:
        """Its place among the entries of a lot: by when it happened, then by number."""
        return (self.draft.happened.at, self.stands_for)


def is_of(entry: Entry, kind: type[FactsT]) -> TypeGuard[Entry[FactsT]]:
    """Return whether an entry is of a kind."""
    return isinstance(entry.draft.facts, kind)


def entries_of(entries: Iterable[Entry], kind: type[FactsT]) -> Iterator[Entry[FactsT]]:
    """Yield the entries of a kind, in their order."""
    return (entry for entry in entries if is_of(entry, kind))


def utc(moment: datetime) -> datetime:
    """Return `moment` in UTC, cut to whole seconds."""
    return moment.astimezone(UTC).replace(microsecond=0)
