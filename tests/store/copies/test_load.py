"""Appending many entries at once leaves what appending them one by one leaves."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from msgspec.structs import replace
from sqlalchemy import select
from sqlalchemy.exc import OperationalError

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import Add, Draft, Entry, Note, When
from ledger.domain.entries.canonical import canonical_text
from ledger.domain.entries.plain import entry_text
from ledger.errors import InputError, RefusedError, StorageError
from ledger.service.desk.book import Book
from ledger.service.evidence.verify import verify
from ledger.store.audit.rows import Reader
from ledger.store.copies import load
from ledger.store.copies.load import Chains
from ledger.store.form.appends import out_of_order
from ledger.store.form.columns import DETAIL_FIELDS
from ledger.store.form.create import create_book
from ledger.store.form.tables import DETAILS, METADATA
from ledger.store.write import recorder
from ledger.store.write.rows import insert_many
from tests.benchmarks import bulk
from tests.benchmarks.bulk import Bulk
from tests.conftest import Server
from tests.keeper import MORNING, Keeper, silent


@pytest.fixture
def empty_sqlite(tmp_path: Path) -> Book:
    return made(str(tmp_path / "empty.db"))


@pytest.fixture
def empty_postgres(server: Server) -> Book:
    return made(server.where(server.new_database()))


@pytest.fixture(params=["empty_sqlite", "empty_postgres"])
def empty(request: pytest.FixtureRequest) -> Iterator[Book]:
    """A book without an entry, on each engine."""
    book: Book = request.getfixturevalue(request.param)
    yield book
    book.close()


def made(where: str) -> Book:
    book = Book(where)
    create_book(book.engine, where)
    return book


def all_rows(book: Book) -> dict[str, list[tuple[object, ...]]]:
    with book.reading() as connection:
        return {
            name: [
                tuple(row)
                for row in connection.execute(select(table).order_by(*table.primary_key.columns))
            ]
            for name, table in METADATA.tables.items()
        }


def note(seq: int, lot: str | None = None) -> Entry:
    return Entry(seq, Draft(Note("Words."), lot, When(MORNING, 0), "AB"), MORNING, seq)


def append(book: Book, *entries: Entry) -> int:
    with book.writing() as connection:
        return Bulk(connection).append(entries)


@pytest.mark.parametrize("chunk", [1, 7, 2000])
def test_a_whole_book_is_appended_with_the_same_rows_and_root(
    empty: Book, sqlite_walked: Keeper, monkeypatch: pytest.MonkeyPatch, chunk: int
) -> None:
    monkeypatch.setattr(bulk, "CHUNK", chunk)
    entries = sqlite_walked.entries()
    assert append(empty, *entries) == len(entries)
    with sqlite_walked.reading() as connection:
        details = [tuple(row) for row in connection.execute(select(DETAILS))]
    with empty.writing() as connection, out_of_order(connection):
        insert_many(connection, "details", details)
    assert all_rows(empty) == all_rows(sqlite_walked.book)
    assert verify(empty) == verify(sqlite_walked.book)


def test_entries_follow_on_those_that_were_appended_one_by_one(
    sqlite_keeper: Keeper,
) -> None:
    last = len(sqlite_keeper.entries())
    append(sqlite_keeper.book, note(last + 1), note(last + 2))
    assert sqlite_keeper.do("note", text="By hand.").seq == last + 3
    append(sqlite_keeper.book, note(last + 4))
    assert verify(sqlite_keeper.book).faults == ()


def test_the_root_is_that_of_the_book(sqlite_keeper: Keeper) -> None:
    last = len(sqlite_keeper.entries())
    with sqlite_keeper.book.writing() as connection:
        appending = bulk.Bulk(connection)
        appending.append([note(last + 1)])
        assert appending.root() == recorder.root(connection)


def test_a_number_out_of_order_is_refused_and_nothing_is_left(sqlite_keeper: Keeper) -> None:
    last = len(sqlite_keeper.entries())
    with pytest.raises(RefusedError) as raised:
        append(sqlite_keeper.book, note(last + 1), note(last + 3))
    assert raised.value.problems == (
        (
            f"Entry {last + 3} cannot follow on entry {last + 1}.",
            "Append the entries in the order of their numbers, without gaps.",
        ),
    )
    assert len(sqlite_keeper.entries()) == last


def test_a_lot_that_nothing_opened_is_refused(sqlite_keeper: Keeper) -> None:
    last = len(sqlite_keeper.entries())
    with pytest.raises(RefusedError) as raised:
        append(sqlite_keeper.book, note(last + 1, lot="NONE-1"))
    assert raised.value.problems == (
        (
            f"Entry {last + 1} speaks of the lot NONE-1, which no entry before it opened.",
            "Append the entry that opens it first.",
        ),
    )


@pytest.mark.parametrize("engine", ["sqlite", "postgres"])
def test_what_the_storage_refuses_is_told_in_words_and_not_kept(
    engine: str, request: pytest.FixtureRequest
) -> None:
    """A source that the facts name and no movement does; a note by the same person is taken."""
    keeper: Keeper = request.getfixturevalue(f"{engine}_keeper")
    last = len(keeper.entries())
    append(keeper.book, note(last + 1))
    stray = note(last + 2)
    facts = Add("NONE-1", Quantity(1, Measure.UL, "1 µL"))
    with pytest.raises(StorageError, match=r"^The book refused what was to be stored: "):
        append(keeper.book, replace(stray, draft=replace(stray.draft, facts=facts)))
    assert len(keeper.entries()) == last + 1


@pytest.mark.parametrize(
    ("corrects", "stands_for", "fault"),
    [
        (None, 5, ""),
        (2, 2, ""),
        (4, 1, ""),
        (None, 2, "does not stand for entry 5"),
        (4, 4, "does not stand for entry 1"),
        (4, 3, "does not stand for entry 1"),
        (5, 5, "corrects entry 5, which does not come before it"),
        (6, 6, "corrects entry 6, which does not come before it"),
        (0, 0, "corrects entry 0, which does not come before it"),
        (1, 1, "corrects entry 1, which is not in force"),
        (3, 1, "corrects entry 3, which is not in force"),
    ],
)
def test_a_correction_stands_at_the_place_of_the_first_of_its_chain_or_is_refused(
    corrects: int | None, stands_for: int, fault: str
) -> None:
    """Entry 3 corrects the first and 4 corrects 3; the second stands alone."""
    chains = Chains()
    for seq, of, place in ((1, None, 1), (2, None, 2), (3, 1, 1), (4, 3, 1)):
        assert chains.fault(mended(seq, of, place)) == ""
    assert chains.fault(mended(5, corrects, stands_for)) == fault


def mended(seq: int, corrects: int | None, stands_for: int) -> Entry:
    draft = Draft(Note("Fine."), None, When(MORNING, 0), "AB", corrects=corrects)
    return Entry(seq, draft, MORNING, stands_for)


def test_of_details_what_a_line_does_not_tell_is_none_and_more_than_they_have_is_refused() -> None:
    salt = "0a" * 32
    read = load._details
    told = {"details": {"phone": "01 555"}, "entry": 7, "salt": salt}
    cells = dict(zip(("entry", "salt", *DETAIL_FIELDS), read(7, canonical_text(told)), strict=True))
    others = dict.fromkeys(set(DETAIL_FIELDS) - {"phone"})
    assert cells == {"entry": 7, "salt": salt, "phone": "01 555", **others}
    for more in ({**told, "hue": 1}, {**told, "details": {"hue": 1}}, {**told, "salt": "0A"}):
        with pytest.raises(InputError) as raised:
            read(7, canonical_text(more))
        assert raised.value.what == ("Line 8 is not the details of an entry as a book writes them.")


def test_lines_that_fit_each_by_itself_and_not_together_are_told(empty_sqlite: Book) -> None:
    """Two of them tell of details of one entry, as no book has them."""
    told = {"details": {"phone": "01 555"}, "entry": 1, "salt": "0a" * 32}
    with empty_sqlite.writing() as connection, pytest.raises(InputError) as raised:
        load.load(connection, [canonical_text(told)] * 2, 2, silent)
    ((what, todo),) = raised.value.problems
    assert what.startswith("Lines 2 to 1 do not fit together: ")
    assert todo == "Nothing was kept. Use an export that is whole, as pottle export writes it."


def test_a_line_that_no_book_writes_in_its_place_is_told_with_what_is_wrong() -> None:
    told = entry_text(note(1))
    unknown = entry_text(note(1, lot="NONE-1"))
    for line, seq, what in (
        ("so it is", 1, "is not an entry as a book writes it"),
        (told.replace(":", ": ", 1), 1, "is not an entry as a book writes it"),
        (told, 2, "holds entry 1, where entry 2 was expected"),
        (entry_text(mended(2, 5, 5)), 2, "corrects entry 5, which does not come before it"),
        (unknown, 1, "speaks of the lot NONE-1, which no line before it opened"),
    ):
        with pytest.raises(InputError) as raised:
            load._rows(Reader(), Chains(), seq, line)
        assert raised.value.what == f"Line {seq + 1} {what}."
    assert [table for table, _ in load._rows(Reader(), Chains(), 1, told)] == ["entry", "note"]


def test_a_storage_that_fails_is_not_what_the_lines_say(
    empty_sqlite: Book, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object) -> None:
        raise OperationalError("", None, Exception("disk full"))

    monkeypatch.setattr(load, "insert_many", full)
    with empty_sqlite.writing() as connection, pytest.raises(OperationalError, match="disk full"):
        load.load(connection, [entry_text(note(1))], 1, silent)


def test_entries_are_put_in_by_chunks_and_after_the_first_details_come_details_alone(
    empty_sqlite: Book, monkeypatch: pytest.MonkeyPatch
) -> None:
    details = canonical_text({"details": {"phone": "01"}, "entry": 1, "salt": "0a" * 32})
    lines = [entry_text(note(seq)) for seq in range(1, 6)]
    monkeypatch.setattr(load, "CHUNK", 2)
    for entries, told in ((lines[:4], [2, 4, 4]), (lines, [2, 4, 5])):
        done: list[tuple[int, int]] = []
        with empty_sqlite.writing() as connection:
            met = load.load(connection, entries, 9, lambda *far, done=done: done.append(far))
            assert (met.last, done) == (len(entries), [(far, 9) for far in told])
            connection.rollback()
    with empty_sqlite.writing() as connection, pytest.raises(InputError) as raised:
        load.load(connection, [lines[0], details, lines[1]], 3, silent)
    assert raised.value.what == (
        "Line 4 is no details, and after the first of these come details alone."
    )
