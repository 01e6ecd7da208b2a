"""A book is copied, restored and carried from one engine to the other with every entry."""

import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.errors import FindingError, InputError, LedgerError, StorageError
from ledger.service import copying
from ledger.service.book import open_book
from ledger.service.sealing import seal
from ledger.service.verifying import verify
from tests.conftest import Server
from tests.keeper import Keeper, SetClock
from tests.service.hostile import found_in, run, text_put

NOTHING_KEPT = "Nothing was kept. Use an export that is whole, as pottle export writes it."


def silent(done: int, total: int) -> None:
    """Take no notice of progress."""


@pytest.fixture(params=["sqlite_walked", "postgres_walked"])
def walked(request: pytest.FixtureRequest) -> Keeper:
    """A book with a row in every table."""
    found: Keeper = request.getfixturevalue(request.param)
    return found


@pytest.fixture(params=["file", "server"])
def place(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """A place where no book is."""
    if request.param == "file":
        return str(tmp_path / "new.db")
    server: Server = request.getfixturevalue("server")
    return server.where(server.new_database())


@pytest.fixture(scope="module")
def lines(walked_template: Path, tmp_path_factory: pytest.TempPathFactory) -> list[str]:
    """The lines of a book with a row in every table."""
    path = tmp_path_factory.mktemp("lines") / "book.jsonl"
    copying.export(open_book(str(walked_template)), path, silent)
    return path.read_text(encoding="utf-8").split("\n")


def test_a_book_is_carried_to_any_place_with_its_root(
    walked: Keeper, place: str, tmp_path: Path
) -> None:
    told: list[tuple[int, int]] = []
    made = copying.export(walked.book, tmp_path / "book.jsonl", silent)
    put = copying.import_book(
        made.path, place, lambda done, total: told.append((done, total)), walked.clock
    )
    carried = Keeper(open_book(place, walked.clock), walked.clock)
    assert put.seal == made.seal == seal(walked.book) == seal(carried.book)
    assert verify(carried.book).faults == ()
    assert carried.bodies() == walked.bodies()
    assert told[-1] == (made.seal.entries, made.seal.entries)
    assert carried.do("note", text="Written on.").seq == made.seal.entries + 1
    copying.export(walked.book, tmp_path / "again.jsonl", silent)
    assert (tmp_path / "again.jsonl").read_bytes() == made.path.read_bytes()


def test_a_backup_is_named_by_day_and_seal_private_verified_and_restored(
    walked: Keeper, tmp_path: Path
) -> None:
    made = copying.backup(walked.book, tmp_path, silent)
    is_server = "://" in walked.book.where
    assert made.path.name == (
        f"pottle-2026-03-09-{made.seal.root[:8]}.{'jsonl' if is_server else 'db'}"
    )
    assert made.path.stat().st_mode & 0o777 == 0o600
    to = tmp_path / "restored.db"
    assert copying.restore(made.path, str(to), silent, walked.clock).seal == made.seal
    assert to.stat().st_mode & 0o777 == 0o600
    restored = Keeper(open_book(str(to), walked.clock), walked.clock)
    assert verify(restored.book).faults == ()
    assert restored.bodies() == walked.bodies()
    restored.do("note", text="Written on.")
    restored.book.engine.dispose()
    with closing(sqlite3.connect(to)) as client:
        assert client.execute("PRAGMA journal_mode").fetchone() == ("wal",)
    assert [path.name for path in tmp_path.iterdir() if path.suffix == ".part"] == []


def test_a_backup_is_of_one_moment_while_another_writes(
    sqlite_walked: Keeper, tmp_path: Path
) -> None:
    other = Keeper(open_book(sqlite_walked.book.where), SetClock())
    before = len(sqlite_walked.bodies())

    def write(done: int, total: int) -> None:
        if len(other.bodies()) == before:
            other.do("note", text="Meanwhile.")

    made = copying.backup(sqlite_walked.book, tmp_path, write)
    assert made.seal.entries == before
    assert len(sqlite_walked.bodies()) == before + 1
    assert verify(open_book(str(made.path))).entries == before


def test_no_copy_takes_the_place_of_a_file(walked: Keeper, tmp_path: Path) -> None:
    made = copying.backup(walked.book, tmp_path, silent)
    kept = made.path.read_bytes()
    there = tmp_path / "there.db"
    there.write_text("Mine.")
    tries: list[Callable[[], object]] = [
        lambda: copying.backup(walked.book, tmp_path, silent),
        lambda: copying.export(walked.book, there, silent),
        lambda: copying.restore(made.path, str(there), silent),
    ]
    for attempt in tries:
        with pytest.raises(StorageError) as raised:
            attempt()
        assert raised.value.what.endswith("already; it was left as it is.")
    assert (made.path.read_bytes(), there.read_text()) == (kept, "Mine.")


def test_a_place_with_a_book_takes_no_other(walked: Keeper, tmp_path: Path) -> None:
    made = copying.export(walked.book, tmp_path / "book.jsonl", silent)
    before = walked.bodies()
    with pytest.raises(StorageError) as raised:
        copying.import_book(made.path, walked.book.where, silent)
    assert raised.value.what.endswith("already; it was left as it is.")
    assert walked.bodies() == before


def test_no_book_is_put_beside_the_log_of_another(sqlite_walked: Keeper, tmp_path: Path) -> None:
    """SQLite would write what a log holds into whatever book it finds beside it."""
    left = tmp_path / "gone.db-wal"
    left.write_bytes(b"frames")
    backup = copying.backup(sqlite_walked.book, tmp_path, silent).path
    lines = copying.export(sqlite_walked.book, tmp_path / "book.jsonl", silent).path
    for file in (backup, lines):
        with pytest.raises(StorageError) as raised:
            copying.restore(file, str(tmp_path / "gone.db"), silent)
        assert raised.value.problems == (
            (
                f"There is a file {left}, left by another book that was at {tmp_path / 'gone.db'}.",
                "Move it to a safe place first: it may hold that book's last entries.",
            ),
        )
    assert left.read_bytes() == b"frames"
    assert not (tmp_path / "gone.db").exists()


def test_a_missing_folder_is_said(walked: Keeper, tmp_path: Path) -> None:
    with pytest.raises(StorageError) as raised:
        copying.export(walked.book, tmp_path / "none" / "book.jsonl", silent)
    assert raised.value.problems == (
        (
            f"The file {tmp_path / 'none' / 'book.jsonl'} could not be written: No such file or "
            "directory.",
            "Choose a folder that exists, has room, and that you may write in.",
        ),
    )


def test_a_changed_book_is_neither_backed_up_nor_exported(
    sqlite_walked: Keeper, tmp_path: Path
) -> None:
    body = dict(sqlite_walked.bodies())[1].replace("Quayside", "Baywalk").encode()
    run(Path(sqlite_walked.book.where), text_put(1, body, hashed=True))
    with pytest.raises(FindingError):
        copying.backup(sqlite_walked.book, tmp_path, silent)
    with pytest.raises(FindingError) as raised:
        copying.export(sqlite_walked.book, tmp_path / "book.jsonl", silent)
    assert raised.value.problems == (
        (
            "The entries do not have the root of the book's own tree.",
            "Nothing was written. Run pottle verify to see what does not fit.",
        ),
    )
    assert {path.name for path in tmp_path.iterdir()} <= {
        "walked.db",
        "walked.db-wal",
        "walked.db-shm",
    }


def test_a_changed_backup_is_not_restored(sqlite_walked: Keeper, tmp_path: Path) -> None:
    made = copying.backup(sqlite_walked.book, tmp_path, silent)
    run(made.path, "UPDATE note SET text = 'Other.'")
    whats = found_in(made.path)
    with pytest.raises(FindingError) as raised:
        copying.restore(made.path, str(tmp_path / "restored.db"), silent)
    assert [what for what, _ in raised.value.problems] == whats
    assert not (tmp_path / "restored.db").exists()


def test_a_file_that_is_no_backup_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "words.txt"
    path.write_text("Only words.")
    with pytest.raises(InputError) as raised:
        copying.restore(path, str(tmp_path / "restored.db"), silent)
    assert raised.value.problems == (
        ("The first line is not that of a book in lines.", "Name a file of pottle export."),
    )


def test_a_server_takes_no_file_of_sqlite(
    server: Server, sqlite_walked: Keeper, tmp_path: Path
) -> None:
    made = copying.backup(sqlite_walked.book, tmp_path, silent)
    with pytest.raises(InputError) as raised:
        copying.restore(made.path, server.where("template1"), silent)
    assert raised.value.what == (
        "A server takes a book in lines, and this backup is a file of SQLite."
    )


def swap(lines: list[str], one: int, other: int) -> list[str]:
    swapped = [*lines]
    swapped[one], swapped[other] = swapped[other], swapped[one]
    return swapped


BAD_LINES: dict[str, tuple[Callable[[list[str]], list[str]], str]] = {
    "a line lost": (
        lambda lines: lines[:5] + lines[6:],
        "Line 6 holds entry 6, where entry 5 was expected.",
    ),
    "a line twice": (
        lambda lines: [*lines[:6], *lines[5:]],
        "Line 7 holds entry 5, where entry 6 was expected.",
    ),
    "two lines swapped": (
        lambda lines: swap(lines, 4, 5),
        "Line 5 holds entry 5, where entry 4 was expected.",
    ),
    "the end lost": (
        lambda lines: lines[:-2],
        "The file has {less} entries, and its first line says {size}.",
    ),
    "a line cut": (
        lambda lines: [*lines[:3], lines[3][:-9], *lines[4:]],
        "Line 4 is not an entry as a book writes it.",
    ),
    "a word changed": (
        lambda lines: [lines[0], *(line.replace("Anna", "Hanna") for line in lines[1:])],
        "The entries do not have the root that the first line says.",
    ),
    "a space more": (
        lambda lines: [lines[0], lines[1].replace(":", ": ", 1), *lines[2:]],
        "Line 2 is not an entry as a book writes it.",
    ),
    "a first line of another root": (
        lambda lines: [lines[0].replace('"root":"', '"root":"ab')[:-4] + '"}', *lines[1:]],
        "The entries do not have the root that the first line says.",
    ),
    "a first line of another house": (
        lambda lines: [lines[0].replace("Quayside", "Kerbside"), *lines[1:]],
        "The entries are of the house Quayside Essences, and the first line of another.",
    ),
    "a lot nobody opened": (
        lambda lines: [
            lines[0], *(line.replace('"SOO-001-3"', '"SOO-009-J"', 1) for line in lines[1:])
        ],
        "Line {oil} speaks of the lot SOO-009-J, which no line before it opened.",
    ),
    "a person nobody entered": (
        lambda lines: [*lines[:4], *(line.replace('"by":"AB"', '"by":"ZZ"') for line in lines[4:])],
        "",
    ),
}  # fmt: skip


@pytest.mark.parametrize("case", BAD_LINES)
def test_lines_that_do_not_fit_are_refused_and_nothing_is_kept(
    case: str, lines: list[str], tmp_path: Path
) -> None:
    spoil, what = BAD_LINES[case]
    path = tmp_path / "bad.jsonl"
    path.write_text("\n".join(spoil(lines)), encoding="utf-8")
    with pytest.raises((InputError, FindingError)) as raised:
        copying.import_book(path, str(tmp_path / "new.db"), silent)
    size = len(lines) - 2
    oil = next(n for n, line in enumerate(lines, start=1) if '"SOO-001-3"' in line)
    assert raised.value.problems[0][0].startswith(what.format(size=size, less=size - 1, oil=oil))
    assert raised.value.problems[0][1] == NOTHING_KEPT
    assert [item.name for item in tmp_path.iterdir()] == ["bad.jsonl"]


@pytest.mark.parametrize(
    ("head", "what"),
    [
        ("", "The first line is not that of a book in lines."),
        ("{}", "The first line is not that of a book in lines."),
        ("[1]", "The first line is not that of a book in lines."),
        (
            '{"entries":1,"format":"pottle book 2","house":"W","root":"ab"}',
            "The file is of the form 'pottle book 2', not 'pottle book 1'.",
        ),
        (
            '{"entries":1,"format":"pottle book 1","house":"W","root":"ab"}',
            "The seal's root has 2 characters of 0-9 and a-f, not 64.",
        ),
        (
            '{"entries":"x","format":"pottle book 1","house":"W","root":"ab"}',
            "The seal's number of entries is written as 'x'.",
        ),
    ],
)
def test_a_first_line_that_is_none_is_refused(head: str, what: str, tmp_path: Path) -> None:
    path = tmp_path / "bad.jsonl"
    path.write_text(head, encoding="utf-8")
    with pytest.raises(InputError) as raised:
        copying.import_book(path, str(tmp_path / "new.db"), silent)
    assert raised.value.what == what


def test_a_failed_import_leaves_nothing_on_a_server(
    server: Server, lines: list[str], tmp_path: Path
) -> None:
    path = tmp_path / "bad.jsonl"
    path.write_text("\n".join(swap(lines, 7, 8)), encoding="utf-8")
    where = server.where(server.new_database())
    with pytest.raises(InputError):
        copying.import_book(path, where, silent)
    with pytest.raises(StorageError) as raised:
        open_book(where)
    assert raised.value.what == "The database named in POTTLE_LEDGER holds no book."


@given(data=st.data())
def test_any_changed_byte_of_the_lines_is_refused_in_words(
    data: st.DataObject, lines: list[str], tmp_path_factory: pytest.TempPathFactory
) -> None:
    folder = tmp_path_factory.mktemp("fuzz")
    whole = "\n".join(lines).encode()
    place = data.draw(st.integers(0, len(whole) - 1))
    byte = data.draw(st.binary(min_size=1, max_size=3))
    changed = whole[:place] + byte + whole[place + data.draw(st.integers(0, 3)) :]
    path = folder / "bad.jsonl"
    path.write_bytes(changed)
    try:
        made = copying.import_book(path, str(folder / "new.db"), silent)
    except LedgerError:
        assert not (folder / "new.db").exists()
    else:
        with path.open("rb") as file:
            assert file.readlines()[1:] == whole.splitlines(keepends=True)[1:]
        assert made.seal.root == seal(open_book(str(folder / "new.db"))).root
    shutil.rmtree(folder)
