"""`pottle export`: the lines of a book, which become a book elsewhere."""

from tests.cli.shell import Shell


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
