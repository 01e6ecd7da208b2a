"""`pottle upgrade`: an older book is brought up only when asked."""

from pathlib import Path

from ledger.store.engine.connections import SCHEMA_VERSION
from tests.cli.shell import Shell
from tests.old_books import OLD_BOOKS


def test_an_older_book_is_recognised_and_upgraded_only_when_asked(tmp_path: Path) -> None:
    old = Shell(tmp_path / "old.db")
    OLD_BOOKS[0].put(old.book)
    before = old.book.read_bytes()
    refused = old.run("note", "-", "x")
    assert (refused.exit_code, refused.complaints) == (
        5,
        [
            f"The book {old.book} is of version 1; this pottle writes version {SCHEMA_VERSION}.",
            "  Run pottle upgrade, which keeps a copy first. Nothing was changed.",
        ],
    )
    assert old.book.read_bytes() == before
    done = old.run("upgrade", "--keep-in", str(tmp_path))
    assert done.lines[0] == (
        f"The book was brought from version 1 to {SCHEMA_VERSION}; its 36 entries and "
        "their root are the same, and it was verified."
    )
    assert done.lines[1].startswith(f"The book as it was is kept in {tmp_path}/pottle-")
    assert old.run("upgrade").lines == [
        f"The book is of version {SCHEMA_VERSION} already; nothing was changed."
    ]
    assert old.run("verify").exit_code == 0
