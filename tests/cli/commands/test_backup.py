"""Backup, restore, export, import and upgrade at the prompt."""

from pathlib import Path

from ledger.store.engine.connections import SCHEMA_VERSION
from tests.cli.shell import Shell
from tests.old_books import OLD_BOOKS


def test_a_backup_is_made_told_of_and_brought_back(shell: Shell) -> None:
    seal = shell.run("seal").lines
    Path("kept").mkdir()
    answer = shell.run("backup", "kept")
    (path,) = Path("kept").iterdir()
    assert (answer.exit_code, answer.lines) == (
        0,
        [
            f"The copy {path} has 38 entries and was verified.",
            "Keep it on another disk. Bring it back with: pottle restore FILE --to PATH",
            *seal,
        ],
    )
    assert path.name.endswith(f"-{seal[2][5:13]}.db")
    assert shell.run("restore", str(path), "--to", "back.db").lines == [
        "The book back.db has 38 entries, as the backup; it was verified.",
        *seal,
    ]
    assert Shell(Path("back.db")).run("verify", "--seal", "\n".join(seal)).exit_code == 0
    again = shell.run("backup", "kept")
    assert (again.exit_code, again.complaints[0]) == (
        5,
        f"There is a file {path} already; it was left as it is.",
    )


def test_an_export_becomes_a_book_elsewhere(shell: Shell) -> None:
    seal = shell.run("seal").lines
    assert shell.run("export", "book.jsonl").lines == [
        "The file book.jsonl holds 38 entries.",
        "Make a book of it with: pottle import --book book.jsonl --ledger PATH|URL",
        *seal,
    ]
    made = shell.run("import", "--book", "book.jsonl", "--ledger", "new.db")
    assert made.lines == [
        "The book new.db has 38 entries, as the export; it was verified.",
        *seal,
    ]
    assert shell.run("import", "--book", "book.jsonl").complaints == [
        f"There is a file at {shell.book} already; it was left as it is.",
        "  Open that book, or give another place with --ledger.",
    ]
    assert shell.entries() == 38


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
