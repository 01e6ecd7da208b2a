"""`pottle upgrade`: an older book is brought up only when asked."""

from pathlib import Path

from cli.screens.copies.copied import restated_lines
from ledger.domain.lots.lot import Status
from ledger.service.copies.upgrade import Restated
from ledger.store.engine.connections import SCHEMA_VERSION
from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
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


def test_lots_that_stand_elsewhere_by_the_rules_of_today_are_told_with_what_to_look_at() -> None:
    lots = [Restated(code, Status.RELEASED, Status.FINISHED) for code in ("OE-001-5", "OE-002-3")]
    assert list(restated_lines(lots)) == [
        "By the rules of this version these lots stand elsewhere:",
        "  OE-001-5: released before, finished now, since something went in later.",
        "  OE-002-3: released before, finished now, since something went in later.",
        "Next: pottle lot OE-001-5",
    ]
    assert list(restated_lines([])) == []


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("upgrade")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("upgrade", still)
