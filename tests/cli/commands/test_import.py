"""`pottle import`: a book out of lines, or why not."""

from pathlib import Path

from cli.screens.copies import take_in as module
from tests.cli.asked import check_asked
from tests.cli.cases import check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.said import check_constants


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


def write(name: str, text: str) -> None:
    Path(name).write_text(text, encoding="utf-8")


def test_a_rehearsal_tells_findings_with_exit_code_1_and_changes_nothing(shell: Shell) -> None:
    write("note.csv", "at;lot;text\n2026-03-02;NO-7;Fine\n2026-03-03;;Stored\n")
    before = shell.entries()
    answer = shell.run("import", "note.csv", "--dry-run")
    assert (answer.exit_code, answer.lines) == (
        1,
        [
            "note.csv: 2 rows; words of the book as its map, parted by semicolons, UTF-8.",
            'note.csv line 2, column lot: There is no lot "NO-7" in the book, nor in an earlier '
            "row. Write its whole code, or hand in the row that opens it too.",
            "1 finding; nothing was recorded.",
        ],
    )
    assert shell.entries() == before


def test_a_table_is_taken_in_once(shell: Shell) -> None:
    write("note.csv", "at,text\n2026-03-03,Stored\n")
    assert shell.run("import", "note.csv", "--dry-run").lines[1:] == [
        "1 row would make 1 entry (1 note); nothing was recorded.",
        "Next: the same without --dry-run",
    ]
    assert shell.run("import", "note.csv").lines[1:] == [
        "Recorded 39 to 39: 1 row, 1 entry (1 note).",
        "Next: pottle stock",
    ]
    again = shell.run("import", "note.csv", "--json").json
    assert (again["known_rows"], again["entries"], again["is_recorded"]) == (1, [], False)


def test_a_map_is_proposed_and_read_again(shell: Shell) -> None:
    write("season.csv", "Batch;Started;Product;Planned mL\nO 7;2026-03-01;Orange;480\n")
    assert shell.run("import", "season.csv", "--like", "map.toml").lines == [
        "A map for season.csv is proposed in map.toml: read it, and put right what is not so.",
        "Next: pottle import season.csv --map map.toml --dry-run",
    ]
    assert shell.run("import", "season.csv", "--map", "map.toml").lines[-1] == "Next: pottle stock"
    assert "O-7" in shell.run("stock", "--all").out


def test_of_tables_that_cannot_be_read_no_map_is_proposed(shell: Shell) -> None:
    write("empty.csv", "")
    problem = ("empty.csv: It is empty.", "Give a heading and rows below it.")
    check_refused(("import empty.csv --like map.toml", 2, problem), shell)
    assert not Path("map.toml").exists()


def test_words_that_no_import_takes_are_refused(shell: Shell) -> None:
    check_refused(
        (
            "import",
            2,
            (
                "Either tables are taken into the book, or a new book is made of an export.",
                "Give the place of the tables, or a book with --book.",
            ),
        ),
        shell,
    )
    problem = ('"dym" is no order of days.', "Give --dates with one of: dmy, mdy, ymd.")
    check_refused(("import x.csv --dates dym", 2, problem), shell)
    problem = ('"_" is no sign that parts decimals.', "Give --decimal , or --decimal .")
    check_refused(("import x.csv --decimal _", 2, problem), shell)
    problem = (
        "There is no map danish, neither as a file nor with pottle.",
        "Name a file, or one of: batch-sheet, stall-sheet, german-season, french-season.",
    )
    check_refused(("import x.csv --map danish", 2, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("import")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("import", still)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


def test_a_map_that_is_there_is_left_before_any_table_is_read(shell: Shell) -> None:
    """Such a table is none: that would be told first if it were read first."""
    write("map.toml", "mine")
    problem = (
        "There is a file map.toml already; it was left as it is.",
        "Give another name with --like, or --force to write over it.",
    )
    check_refused(("import none.csv --like map.toml", 5, problem), shell)
    assert Path("map.toml").read_text(encoding="utf-8") == "mine"
