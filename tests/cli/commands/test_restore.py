"""`pottle restore`: a backup is brought back where no book is."""

from pathlib import Path

from tests.cli.asked import check_asked
from tests.cli.cases import check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_a_backup_that_is_not_there_is_said(shell: Shell) -> None:
    problem = (
        "The file none.db could not be read: No such file or directory.",
        "Check its name and rights.",
    )
    check_refused(("restore none.db --to back.db", 5, problem), shell)


def test_a_backup_is_the_book_as_it_was(shell: Shell) -> None:
    seal = shell.run("seal").lines
    Path("kept").mkdir()
    shell.run("backup", "kept")
    (backup,) = Path("kept").iterdir()
    shell.run("note", "-", "Later")
    assert shell.run("restore", str(backup), "--to", "back.db").lines == [
        "The book back.db has 38 entries, as the backup; it was verified.",
        *seal,
    ]
    assert Shell(Path("back.db")).run("seal").lines == seal


def test_a_book_that_is_there_is_not_written_over(shell: Shell) -> None:
    problem = (
        "There is a file pottle.db already; it was left as it is.",
        "Give another place. Nothing was written.",
    )
    check_refused(("restore pottle.db --to pottle.db", 5, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("restore")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("restore", still)
