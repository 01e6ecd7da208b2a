"""`pottle import`: a book out of lines, or why not."""

from pathlib import Path

from tests.cli.cases import check_refused
from tests.cli.shell import Shell


def test_a_file_that_is_not_there_is_said(shell: Shell) -> None:
    problem = (
        "The file none.jsonl could not be read: No such file or directory.",
        "Check its name and rights.",
    )
    check_refused(("import --book none.jsonl --ledger new.db", 5, problem), shell)


def test_a_book_goes_on_where_its_lines_were_put(shell: Shell) -> None:
    shell.run("export", "book.jsonl")
    answer = shell.run("import", "--book", "book.jsonl", "--ledger", "new.db")
    assert answer.lines[0] == "The book new.db has 38 entries, as the export; it was verified."
    assert answer.lines[1:] == shell.run("seal").lines
    said = Shell(Path("new.db")).run("note", "-", "Moved")
    assert said.lines == ["Recorded 39, note: Moved."]


def test_a_book_that_is_there_is_left(shell: Shell) -> None:
    shell.run("export", "book.jsonl")
    problem = (
        "There is a file at pottle.db already; it was left as it is.",
        "Open that book, or give another place with --ledger.",
    )
    check_refused(("import --book book.jsonl --ledger pottle.db", 5, problem), shell)
