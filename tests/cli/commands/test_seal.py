"""`pottle seal`: three lines in words, in a file and for machines."""

from pathlib import Path

from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_a_seal_is_three_lines_in_words_in_a_file_and_for_machines(shell: Shell) -> None:
    answer = shell.run("seal", "--out", "seal.txt")
    house, entries, root = answer.lines
    assert (house, entries) == ("House Wren & Co", "Entries 38")
    assert Path("seal.txt").read_text(encoding="utf-8") == answer.out
    assert shell.run("seal", "--json").json == {
        "house": "Wren & Co",
        "entries": 38,
        "root": root.removeprefix("Root "),
        "lines": [house, entries, root],
        "path": None,
    }
    again = shell.run("seal", "--out", "seal.txt")
    assert (again.exit_code, again.out) == (5, "")
    assert again.complaints == [
        "There is a file seal.txt already; it was left as it is.",
        "  Give another name with --out, or --force to write over it.",
    ]


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("seal")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("seal", still)
