"""Many acts in one transaction: all of them are recorded, or none."""

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager

import pytest

from ledger.domain.entries import Entry
from ledger.errors import StorageError
from ledger.service.bench.note import note
from ledger.service.copies.intake import together as together_module
from ledger.service.copies.intake.together import Within, together
from ledger.service.desk.book import Book, How
from ledger.store.engine.acts import acting
from ledger.store.engine.connections import Connection
from tests.keeper import Keeper

Acts = Callable[[Within], Sequence[Entry] | None]


def notes(within: Within, *texts: str) -> list[Entry]:
    return [note(within, How("AB"), text=text).entry for text in texts]


def test_acts_stand_together_and_are_remembered_once_they_stand(sqlite_keeper: Keeper) -> None:
    """A rehearsal sees its own acts and leaves no trace of them."""
    book, before = sqlite_keeper.book, sqlite_keeper.bodies()
    seen: list[int] = []

    def rehearsed(within: Within) -> None:
        with within.reading() as connection:
            seen.append(connection.exec_driver_sql("SELECT count(*) FROM entry").scalar_one())
        notes(within, "One.", "Two.")
        with within.reading() as connection:
            seen.append(connection.exec_driver_sql("SELECT count(*) FROM entry").scalar_one())

    together(book, rehearsed)
    assert seen == [len(before), len(before) + 2]
    assert (sqlite_keeper.bodies(), book.recorded) == (before, [])
    together(book, lambda within: notes(within, "One.", "Two."))
    assert [seq for seq, _ in sqlite_keeper.bodies()[len(before) :]] == book.recorded
    assert len(book.recorded) == 2


@pytest.mark.parametrize("error", [StorageError("Full.", "Make room."), KeyboardInterrupt()])
def test_what_fails_among_many_acts_leaves_nothing_and_is_told(
    error: BaseException, sqlite_keeper: Keeper
) -> None:
    before = sqlite_keeper.bodies()

    def broken(within: Within) -> None:
        notes(within, "One.")
        raise error

    with pytest.raises(type(error)):
        together(sqlite_keeper.book, broken)
    assert (sqlite_keeper.bodies(), sqlite_keeper.book.recorded) == (before, [])


def test_the_file_is_scrubbed_once_after_acts_that_erase_and_not_after_others(
    sqlite_keeper: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    scrubbed: list[int] = []

    def scrub(book: Book) -> bool:
        scrubbed.append(len(book.recorded))
        return True

    monkeypatch.setattr(Book, "scrub", scrub)

    def erases(within: Within) -> list[Entry]:
        assert not within.scrub()
        assert not within.scrub()
        return notes(within, "One.")

    together(sqlite_keeper.book, lambda within: notes(within, "None."))
    assert scrubbed == []
    together(sqlite_keeper.book, erases)
    assert scrubbed == [2]


@pytest.mark.parametrize("is_made", [True, False])
def test_a_commit_that_nobody_answered_for_is_asked_after_and_stands_or_is_told(
    is_made: bool, sqlite_keeper: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where nothing was recorded nothing is asked."""
    book, gone = sqlite_keeper.book, StorageError("The server went away.", "Look at it.")
    asked: list[tuple[int, str]] = []

    @contextmanager
    def lost(_: Book) -> Iterator[Connection]:
        with acting(book.engine) as connection:
            yield connection
        raise gone

    def stands(_: Book, last: Entry, what: str) -> bool:
        asked.append((last.seq, what))
        return is_made

    monkeypatch.setattr(Book, "writing", lost)
    monkeypatch.setattr(together_module, "stands", stands)
    last = len(sqlite_keeper.bodies()) + 3
    if is_made:
        together(book, lambda within: notes(within, "One.", "Two.", "Three."))
    else:
        with pytest.raises(StorageError) as raised:
            together(book, lambda within: notes(within, "One.", "Two.", "Three."))
        assert raised.value is gone
    assert asked == [(last, "The server went away.")]
    assert book.recorded == ([last - 2, last - 1, last] if is_made else [])
    with pytest.raises(StorageError):
        together(book, lambda _: [])
    assert len(asked) == 1
