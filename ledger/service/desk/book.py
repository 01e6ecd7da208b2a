"""The book as the verbs hold it: where it is, its clock, and who writes how.

Guarantees: one clock, read once for each entry; a closed book holds no file and no server. Refuses:
to open what is no book of this version.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import UTC, datetime
from types import TracebackType
from typing import Generic, Self

from msgspec import Struct

from ledger.domain.entries import Deviation, Entry
from ledger.domain.entries.spine import FactsOf
from ledger.domain.lots.state import LotState
from ledger.store.engine.acts import Foretell, acting
from ledger.store.engine.connections import (
    Connection,
    Engine,
    check_book,
    open_engine,
    reading,
    server_now,
    shown,
)
from ledger.store.write.details import Salt, new_salt

Clock = Callable[[], datetime]
"""Returns the present moment, with its zone."""
Tick = Callable[[int, int], None]
"""Told how many of how many are done."""


def wall_clock() -> datetime:
    """Return the present moment in UTC."""
    return datetime.now(UTC)


class How(Struct, frozen=True):
    """Who writes an entry, and how it is known; all as a person writes it."""

    by: str | None = None
    """Initials."""
    at: str | None = None
    """When it happened; None: now."""
    because: str | None = None
    """The reason, where one is asked for."""
    origin: str | None = None
    """bench, paper, instrument or memory; None: bench, or paper when a sheet is named."""
    sheet: str | None = None
    """Number of the paper sheet it is copied from."""


class Recorded(Struct, Generic[FactsOf], frozen=True):
    """What was recorded by one verb."""

    entry: Entry[FactsOf]
    """The entry."""
    code: str | None = None
    """Code of the lot it opened."""
    remarks: tuple[tuple[str, str], ...] = ()
    """What is merely unusual: what, and what to do."""
    deviations: tuple[Entry[Deviation], ...] = ()
    """Deviations recorded with it."""
    draws_on: tuple[LotState, ...] = ()
    """The lots that it draws on or names, as they were before."""
    is_new: bool = True
    """Whether anything was recorded; False when the book had it already."""
    others: tuple["Recorded", ...] = ()
    """What the same act recorded besides, such as the other jars of an evening."""

    @property
    def seq(self) -> int:
        """The entry's number."""
        return self.entry.seq


@dataclass(slots=True)
class Book:
    """An open book."""

    where: str
    """Path of its file or URL of its server."""
    clock: Clock = wall_clock
    """Its clock."""
    salt: Salt = new_salt
    """Returns salts for what stands beside its entries."""
    engine: Engine = field(init=False, repr=False)
    """Its connection to storage."""
    recorded: list[int] = field(init=False, repr=False, default_factory=list)
    """Numbers of the entries that verbs recorded through it: they stand, whatever fails after."""
    is_in_turn: bool = field(init=False, repr=False, default=False)
    """Whether others wait for all of an act, and not only for what it writes: since one was judged
    by a book in which others wrote before it did."""

    def __post_init__(self) -> None:
        """Prepare the engine; opens nothing yet."""
        self.engine = open_engine(self.where)

    def __enter__(self) -> Self:
        """Return the book; it is closed at the end of the `with`."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """Close the book."""
        self.close()

    @property
    def shown(self) -> str:
        """Its path or address as people are shown it, without passwords."""
        return shown(self.where)

    def now(self, connection: Connection) -> datetime:
        """Return the present moment for what is recorded: on a server that server's own."""
        # A clock that was handed over, as for a season that is played, is what its owner wants.
        own = server_now(connection) if self.clock is wall_clock else None
        return own or self.clock()

    def close(self) -> None:
        """Let go of its file or server; whoever reads in it again takes hold of it anew."""
        self.engine.dispose()

    def scrub(self) -> bool:
        """Leave nothing in the file of what was erased; return whether it was done already."""
        from ledger.store.write.details import scrub  # for this alone

        return scrub(self.engine)

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """Open a transaction that only reads."""
        with reading(self.engine) as connection:
            yield connection

    @contextmanager
    def writing(self, foretell: Foretell | None = None) -> Iterator[Connection]:
        """Open a transaction that appends; all of it is recorded or none.

        Args:
            foretell: Tells what it will ask, for a server to answer at once, while others may
                write; None: others wait from the beginning.
        """
        in_turn = self.is_in_turn or foretell is None
        with acting(self.engine, foretell, in_turn=in_turn) as connection:
            yield connection

    def remember(self, numbers: list[int]) -> None:
        """Remember what an act recorded; who finds that nobody else wrote meanwhile waits no more.

        Args:
            numbers: The numbers of its entries.
        """
        if self.recorded and numbers and numbers[0] == self.recorded[-1] + 1:
            self.is_in_turn = False
        self.recorded += numbers


def open_book(where: str, clock: Clock = wall_clock) -> Book:
    """Open the book at a path or URL.

    Raises:
        StorageError: There is none, or it is of another version.
    """
    book = Book(where, clock)
    try:
        check_book(book.engine, where)
    except BaseException:
        book.close()
        raise
    return book
