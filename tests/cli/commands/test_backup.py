"""`pottle backup`: a verified copy, which `pottle restore` brings back."""

from pathlib import Path

import pytest

from cli.screens.copies import copied as module
from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.said import check_constants


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
    assert (again.exit_code, again.lines[0]) == (
        0,
        f"Nothing is new: the copy {path} has all 38 entries, and was verified.",
    )


def test_a_folder_that_is_not_there_is_told_with_how_to_make_it(shell: Shell) -> None:
    answer = shell.run("backup", "no dir")
    assert (answer.exit_code, answer.complaints) == (
        5,
        [
            "There is no folder no dir to put the copy in.",
            "  Make it with mkdir 'no dir', or name one that is there; without a name the copy "
            "goes where you are.",
        ],
    )


@pytest.mark.parametrize("where", ["sheet.txt", "sheet.txt/copies"])
def test_a_file_in_the_place_of_the_folder_is_told(where: str, shell: Shell) -> None:
    Path("sheet.txt").touch()
    answer = shell.run("backup", where)
    assert (answer.exit_code, answer.complaints) == (
        5,
        [
            "sheet.txt is a file, where a folder to put the copy in was expected.",
            "  Name a folder that is there; without a name the copy goes where you are.",
        ],
    )


def test_a_file_of_its_name_that_is_no_such_copy_stays(shell: Shell) -> None:
    assert shell.run("backup").exit_code == 0
    (path,) = Path().glob("pottle-*.db")
    path.write_bytes(path.read_bytes()[:8192])
    again = shell.run("backup")
    assert (again.exit_code, again.complaints) == (
        5,
        [
            f"There is a file {path} already; it was left as it is.",
            "  Give another place. Nothing was written.",
        ],
    )


def test_a_rehearsal_says_what_would_be_lost(shell: Shell) -> None:
    Path("kept").mkdir()
    shell.run("backup", "kept")
    (path,) = Path("kept").iterdir()
    told = (
        f"The copy {path}, the newest of 1, was put back aside and verified: 38 entries, the "
        "beginning of this book."
    )
    assert shell.run("backup", "--rehearse", "kept").lines[:2] == [
        told,
        "Nothing would be lost today.",
    ]
    shell.run("note", "-", "After the copy.")
    said = shell.run("backup", "--rehearse", "kept")
    assert (said.lines[0], said.lines[2]) == (told, "Next: pottle backup kept")
    assert said.lines[1].startswith("Lost today would be 1 entry: all since ")
    answer = shell.run("backup", "--rehearse", "kept", "--json").json
    assert (answer["lost_entries"], answer["entries"], answer["copies"]) == (1, 39, 1)


def test_a_rehearsal_without_a_copy_or_with_that_of_another_book_is_a_finding(
    shell: Shell,
) -> None:
    Path("kept").mkdir()
    none = shell.run("backup", "--rehearse", "kept")
    assert (none.exit_code, none.complaints) == (
        1,
        [
            "There is no copy in kept, so all of the book would be lost.",
            "  Make one with: pottle backup kept",
        ],
    )
    other = Shell(Path("other.db"))
    other.run("init", "--house", "Another House", "--currency", "EUR")
    other.run("backup", "kept")
    found = shell.run("backup", "--rehearse", "kept")
    (copy,) = Path("kept").glob("*.db")
    assert (found.exit_code, found.complaints) == (
        1,
        [
            f"The copy {copy} is not of this book: The seal is of the house Another House, and "
            "this is the book of Wren & Co.",
            "  Keep both as they are; make another copy with: pottle backup DIR",
        ],
    )
    assert shell.run("backup", "--rehearse", "nowhere").complaints == [
        "There is no folder nowhere.",
        "  Name the folder of the copies.",
    ]


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("backup")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("backup", still)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
