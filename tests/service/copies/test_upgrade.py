"""A book of every past version is brought to this one, after a copy, with the same root."""

import sqlite3
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
from msgspec.structs import replace
from sqlalchemy import Connection, inspect, text

from ledger.domain.lots.lot import Status
from ledger.errors import FindingError, StorageError
from ledger.service.copies import upgrade as upgrading
from ledger.service.copies.copied import Copied
from ledger.service.copies.export import write_lines
from ledger.service.copies.import_ import import_book
from ledger.service.copies.upgrade import Restated, upgrade
from ledger.service.desk.book import open_book
from ledger.service.evidence.seal import seal
from ledger.service.evidence.verify import verify
from ledger.service.lots.dossier import brief_of
from ledger.store.copies.lines import copy_file
from ledger.store.engine.connections import SCHEMA_VERSION, connected, writing
from ledger.store.form.appends import out_of_order
from ledger.store.form.migrate import migrate
from ledger.store.write import recorder
from tests.conftest import Server, new_keeper, opened
from tests.keeper import MORNING, Keeper, SetClock, silent
from tests.old_books import OLD_BOOKS, OldBook
from tests.service.hostile import run

CLOCK = SetClock(MORNING)


@pytest.fixture(params=OLD_BOOKS, ids=lambda old: f"v{old.version}")
def kind(request: pytest.FixtureRequest) -> OldBook:
    """What is known of an old book."""
    found: OldBook = request.param
    return found


@pytest.fixture
def old(kind: OldBook, tmp_path: Path) -> str:
    """Its file."""
    return kind.put(tmp_path / "book.db")


def copy_rows(client: sqlite3.Connection, connection: Connection) -> None:
    """Copy every row of a file into the tables of an empty book, of a form as old or older."""
    names = [row[0] for row in client.execute("SELECT name FROM sqlite_master WHERE type='table'")]
    first = ["lot", "person_key", "material_key", "entry"]
    later = [name for name in names if name not in (*first, "alembic_version")]
    tables = inspect(connection).get_table_names()
    for name in (*first, *sorted(later, key=lambda name: (name.count("_"), name))):
        if name not in tables:
            continue
        there = {column["name"] for column in inspect(connection).get_columns(name)}
        found = client.execute(f'SELECT * FROM "{name}"')
        columns = [item[0] for item in found.description]
        kept = [column for column in columns if column in there]
        marks = ", ".join(f":{column}" for column in kept)
        listed = ", ".join(f'"{column}"' for column in kept)
        rows = [dict(zip(columns, row, strict=True)) for row in found]
        if rows:
            connection.execute(text(f'INSERT INTO "{name}" ({listed}) VALUES ({marks})'), rows)


@pytest.fixture
def old_on_server(old: str, kind: OldBook, server: Server) -> str:
    """The same book on a server, as its version would have kept it there."""
    where = server.where(server.new_database())
    with (
        connected(where) as engine,
        writing(engine) as connection,
        closing(sqlite3.connect(old)) as client,
    ):
        migrate(connection, f"{kind.version:04d}")
        # From version 5 on rows come in the order of their entries, and here table by table.
        with out_of_order(connection):
            copy_rows(client, connection)
    return where


@pytest.fixture(params=["old", "old_on_server"])
def where(request: pytest.FixtureRequest) -> str:
    """A book of a past version."""
    found: str = request.getfixturevalue(request.param)
    return found


def test_an_older_book_is_brought_up_with_the_same_root_after_a_copy_as_it_was(
    where: str, kind: OldBook, tmp_path: Path
) -> None:
    with pytest.raises(StorageError) as raised:
        open_book(where)
    assert raised.value.todo == "Run pottle upgrade, which keeps a copy first. Nothing was changed."
    done = upgrade(where, tmp_path, silent, CLOCK)
    assert (done.before, done.after) == (kind.version, SCHEMA_VERSION)
    with opened(where, CLOCK) as keeper:
        assert (seal(keeper.book).entries, seal(keeper.book).root) == (kind.entries, kind.root)
        assert verify(keeper.book).faults == ()
        why = "the clock of the kept book is ahead of this one"
        assert keeper.do("note", text="Written on.", because=why).seq == kind.entries + 1
    assert done.kept is not None
    assert_is_as_it_was(done.kept.path, kind, is_of_server="://" in where)


def assert_is_as_it_was(copy: Path, kind: OldBook, *, is_of_server: bool) -> None:
    """Hold a copy to what is known of the old book: a file of its version, or lines."""
    assert copy.stat().st_mode & 0o777 == 0o600
    again = str(copy.parent / "again.db")
    name = f"pottle-2026-03-02-{kind.root[:8]}-before-upgrade"
    if is_of_server:
        assert copy.name == f"{name}.jsonl"
        import_book(copy, again, silent)
    else:
        assert copy.name == f"{name}.db"
        with pytest.raises(StorageError) as raised:
            open_book(str(copy))
        says = f"is of version {kind.version}; this pottle writes version {SCHEMA_VERSION}"
        assert says in raised.value.what
        copy.rename(again)
        upgrade(again, copy.parent, silent, CLOCK)
    with open_book(again) as book:
        assert seal(book).root == kind.root


def test_a_book_of_this_version_is_left_as_it_is(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    before = sorted(tmp_path.iterdir())
    done = upgrade(sqlite_keeper.book.where, tmp_path, silent)
    assert (done.before, done.after, done.kept) == (SCHEMA_VERSION, SCHEMA_VERSION, None)
    assert sorted(tmp_path.iterdir()) == before


def test_a_newer_book_is_refused(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    with closing(sqlite3.connect(sqlite_keeper.book.where)) as client:
        client.execute(f"PRAGMA user_version = {SCHEMA_VERSION + 1}")
    with pytest.raises(StorageError) as raised:
        upgrade(sqlite_keeper.book.where, tmp_path, silent)
    assert raised.value.todo == "Use the newer pottle that wrote it. Nothing was changed."


def test_nothing_is_upgraded_when_no_copy_can_be_kept(
    where: str, kind: OldBook, tmp_path: Path
) -> None:
    with pytest.raises(StorageError):
        upgrade(where, tmp_path / "none", silent, CLOCK)
    with pytest.raises(StorageError) as raised:
        open_book(where)
    assert f"is of version {kind.version}" in raised.value.what


def test_an_older_book_that_would_not_verify_is_left_as_it_was(
    old: str, kind: OldBook, tmp_path: Path
) -> None:
    run(Path(old), "UPDATE level SET amount = amount + 1")
    with pytest.raises(FindingError) as raised:
        upgrade(old, tmp_path, silent, CLOCK)
    whats = [what for what, _ in raised.value.problems]
    assert all(what.endswith("says otherwise than the table level in: amount.") for what in whats)
    with pytest.raises(StorageError) as left:
        open_book(old)
    assert f"is of version {kind.version}" in left.value.what
    assert statements(old) == statements(kind.put(tmp_path / "other.db"))


def statements(where: str) -> list[str]:
    with closing(sqlite3.connect(where)) as client:
        return [row[0] for row in client.execute("SELECT sql FROM sqlite_master ORDER BY name")]


def test_an_upgrade_that_is_broken_off_leaves_the_book_as_it_was_and_is_repeated(
    where: str, kind: OldBook, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def break_off(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(upgrading, "audit", break_off)
    with pytest.raises(KeyboardInterrupt):
        upgrade(where, tmp_path, silent, CLOCK)
    with pytest.raises(StorageError) as raised:
        open_book(where)
    assert f"is of version {kind.version}" in raised.value.what
    monkeypatch.undo()
    done = upgrade(where, tmp_path, silent, CLOCK)
    assert done.kept is not None
    assert not done.kept.is_new
    with open_book(where) as book:
        assert seal(book).root == kind.root


def test_what_was_written_after_the_copy_was_made_is_not_upgraded_without_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    kind = OLD_BOOKS[-1]
    where, keep = kind.put(tmp_path / "book.db"), upgrading._keep

    def keep_less(*words: Any) -> Copied:
        kept = keep(*words)
        return replace(kept, seal=replace(kept.seal, root="0" * 64))

    monkeypatch.setattr(upgrading, "_keep", keep_less)
    with pytest.raises(FindingError) as raised:
        upgrade(where, tmp_path, silent, CLOCK)
    assert raised.value.problems == (
        (
            "The book was written in after the copy was made; run pottle upgrade again.",
            "The book was left as it was. Verify it with the pottle that wrote it.",
        ),
    )
    with pytest.raises(StorageError) as left:
        open_book(where)
    assert f"is of version {kind.version}" in left.value.what


def test_an_upgrade_goes_on_with_the_copy_of_one_that_was_cut_off(
    old: str, kind: OldBook, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as patch:
        patch.setattr(upgrading, "_raise_version", lambda *_: None)
        left = upgrade(old, tmp_path, silent, CLOCK).kept
    assert left is not None
    before = left.path.read_bytes()
    again = upgrade(old, tmp_path, silent, CLOCK).kept
    assert again == replace(left, is_new=False)
    assert left.path.read_bytes() == before
    with open_book(old) as book:
        assert seal(book).root == kind.root


@pytest.mark.parametrize("text", [b"", b"something else"], ids=["empty", "words"])
def test_what_is_no_copy_of_the_book_is_not_taken_for_one(
    text: bytes, old: str, kind: OldBook, tmp_path: Path
) -> None:
    place = tmp_path / f"pottle-2026-03-02-{kind.root[:8]}-before-upgrade.db"
    place.write_bytes(text)
    with pytest.raises(StorageError) as raised:
        upgrade(old, tmp_path, silent, CLOCK)
    assert raised.value.problems == (
        (
            f"There is a file {place} already; it was left as it is.",
            "Give another place. Nothing was written.",
        ),
    )
    assert place.read_bytes() == text


def test_lots_that_stand_elsewhere_by_the_rules_of_today_are_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A book of the fourth form in which something went into an essence after its release."""
    # In that form the texts themselves said who people are.
    monkeypatch.setattr(recorder, "committed", lambda _connection, facts, _salt: facts)
    with new_keeper(str(tmp_path / "today.db")) as keeper:
        spirit = keeper.opens("receive", material="spirit", amount="1L", abv="96")
        essence = keeper.opens("start", product="Orange", kind="essence", target="100mL")
        keeper.do("add", lot=essence, source=spirit, amount="100mL")
        keeper.do("finish", lot=essence, volume="100mL")
        keeper.do("look", lot=essence, grade="clear", of="neat")
        keeper.do("judge", lot=essence, verdict="release")
        keeper.do("add", lot=essence, source=spirit, amount="5mL")
        where = str(tmp_path / "fourth.db")
        with (
            connected(where) as engine,
            writing(engine) as connection,
            closing(sqlite3.connect(keeper.book.where)) as client,
        ):
            migrate(connection, "0004")
            copy_rows(client, connection)
    done = upgrade(where, tmp_path, silent, CLOCK)
    assert done.restated == (Restated(essence, "released", "being made"),)
    with open_book(where) as book:
        assert brief_of(book, essence).status is Status.MAKING


def test_a_copy_has_the_entries_of_the_book_and_is_read_as_its_ending_says(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    lines, tables = tmp_path / "copy.jsonl", tmp_path / "copy.db"
    with sqlite_keeper.reading() as connection:
        sealed = seal(sqlite_keeper.book)
        write_lines(connection, sealed, lines, silent)
        copy_file(connection, tables, silent)
    swapped = (tmp_path / "lines.db", tmp_path / "tables.jsonl")
    for kept, other in zip((lines, tables), swapped, strict=True):
        other.write_bytes(kept.read_bytes())
    assert [upgrading._is_copy(path, sealed) for path in (lines, tables, *swapped)] == [
        *(True, True, False, False),
    ]
    grown = replace(sealed, root="0" * 64)
    assert [upgrading._is_copy(path, grown) for path in (lines, tables)] == [False, False]
