"""What a screen shows: nothing wider than it, no code cut, and nothing but text in a pipe."""

import re
import shlex
from dataclasses import replace
from io import StringIO
from itertools import pairwise
from pathlib import Path

import pytest
from rich.console import Console

from cli.kit import tables as looked_at
from cli.kit.tables import column_widths, screen_table, seen
from tests.cli.formulas import FILES
from tests.cli.shell import Shell
from tests.cli.terminal import shown_on
from tests.keeper import copy_book
from tests.kept.golden import check_golden
from tests.kept.said import check_constants

LONG_NOTE = (
    "Smelled of peel and a little of pine; the second pass ran slowly, so the paper was changed."
)


COMMANDS = (
    *("stock", "lot {essence}", "journal", "trace {packed}", "material list"),
    *("limits", "serving {essence} --explain", "cost {packed}", "stock --spirit"),
    *("trace {oil} --forward", "recall {oil} --drill"),
    *("stock --by-date", "stock --value", "stock --low 1000", "sheet {essence}", "due"),
    *("formula list", "formula show orange", "formula diff orange 1 2"),
    "formula scale orange 480mL",
)


CODE = re.compile(r"\b[A-Z]{2,4}-\d{3}-[0-9A-Z]\b")


STYLES = re.compile(r"\x1b\[[0-9;]*m")


@pytest.fixture(scope="module")
def wordy_template(walked_shell: Shell, tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("wordy")
    shell = replace(walked_shell, book=copy_book(walked_shell.book, folder / "pottle.db"))
    for name, text in FILES.items():
        (folder / name).write_text(text, encoding="utf-8")
    for args in (
        *(("formula", "load", str(folder / name)) for name in FILES),
        ("note", "OE-001-5", LONG_NOTE),
        ("material", "change", "spirit", "--name", "Neutral spirit of grain, 96 per cent vol"),
        ("receive", "spirit", "5L", "--from", "The Far Away Distillery of Upper Nowhere"),
        ("send", "BOS-001-S", "1", "--to", "The Tea Room behind the Old Harbour Office"),
    ):
        assert shell.run(*args).exit_code == 0, args
    return shell.book


@pytest.fixture
def wordy(shell: Shell, wordy_template: Path, tmp_path: Path) -> Shell:
    """A book with long words in it: a note, a supplier, a name, a buyer."""
    return replace(shell, book=copy_book(wordy_template, tmp_path / "wordy.db"))


@pytest.mark.parametrize("columns", [80, 120])
@pytest.mark.parametrize("command", COMMANDS)
def test_nothing_is_wider_than_the_screen_no_code_is_cut_and_no_number_parted_from_its_unit(
    wordy: Shell, command: str, columns: int
) -> None:
    args = shlex.split(command.format(**wordy.codes))
    shown = shown_on(columns, args, POTTLE_LEDGER=str(wordy.book), NO_COLOR="1")
    assert max(map(len, shown.splitlines())) <= columns
    assert "…" not in shown
    in_pipe = wordy.run(*args).out
    assert sorted(CODE.findall(shown)) == sorted(CODE.findall(in_pipe))
    assert " ".join(shown.split()) != ""
    assert parted(shown.splitlines()) == []


def test_the_words_of_an_entry_wrap_in_their_own_column(wordy: Shell) -> None:
    lines = shown_on(
        80, ["lot", "OE-001-5"], POTTLE_LEDGER=str(wordy.book), NO_COLOR="1"
    ).splitlines()
    first = next(place for place, line in enumerate(lines) if "note: Smelled" in line)
    column = lines[first].index("note:")
    below = lines[first + 1]
    assert below[:column].strip() == ""
    assert below[column] != " "


def test_colour_is_left_out_where_it_is_not_wanted(wordy: Shell) -> None:
    book = {"POTTLE_LEDGER": str(wordy.book)}
    plain = shown_on(80, ["stock"], NO_COLOR="1", **book)
    styled = shown_on(80, ["stock"], **book)
    assert "\x1b" not in plain
    assert STYLES.search(styled)
    assert STYLES.sub("", styled) == plain


@pytest.mark.parametrize("command", COMMANDS)
def test_a_pipe_gets_text_alone_with_every_cell_whole(wordy: Shell, command: str) -> None:
    out = wordy.line(command).out
    assert "\x1b" not in out
    assert [line for line in out.splitlines() if line != line.rstrip()] == []


def test_whole_sentences_stay_on_one_line_in_a_pipe(wordy: Shell) -> None:
    assert f"note: {LONG_NOTE}\n" in wordy.run("lot", "OE-001-5").out


def test_what_a_terminal_would_obey_is_shown_instead(shell: Shell) -> None:
    assert seen("a\x1b[31mb\x07\N{ZERO WIDTH SPACE}é") == "a·[31mb··é"
    shell.run("hold", "NS-001-J")
    shell.run("release", "NS-001-J", "--because", "clear\x1b[2Jed")
    assert "\x1b" not in shell.run("journal", "--last", "2").out


@pytest.mark.parametrize("room", [120, 80, 60, 44])
def test_columns_fit_and_keep_their_longest_words_as_long_as_they_can(room: int) -> None:
    columns = [
        ["entry", "17"],
        ["when", "2026-03-02 10:09"],
        ["lot", "BOS-001-S"],
        ["what", LONG_NOTE],
    ]
    widths = column_widths(columns, room)
    assert sum(widths) + 2 * 3 <= room
    assert widths[2] >= len("BOS-001-S")
    assert widths[0] >= len("entry")


def test_an_error_is_wrapped_at_words_on_a_screen_and_whole_in_a_pipe(wordy: Shell) -> None:
    env = {"POTTLE_LEDGER": str(wordy.book), "NO_COLOR": "1"}
    wrong = ["trace", "BOS-001-S", "--only", "oill"]
    assert shown_on(80, wrong, 2, **env).splitlines() == [
        '"oill" is no kind of material.',
        "  Give one of: oil, ethanol, clarifier, sugar, water, acid, preservative, gum,",
        "    colour, bottle, closure, label, filter, other.",
    ]
    assert max(map(len, wordy.run(*wrong).complaints)) > 80


PARTED = re.compile(r"(?<![\w.-])\d[\d.,]*$")
"""A line that ends with a number."""


UNIT = re.compile(r"(?:mL|L|g|kg|µm|°C|%|NTU|kPa)\b")


def parted(lines: list[str]) -> list[tuple[list[str], list[str]]]:
    """Return the lines of cells of which one ends with a number whose unit begins the next."""
    cells = [re.split(r"\s{2,}", line.rstrip()) for line in lines]
    return [
        (line, below)
        for line, below in pairwise(cells)
        if any(map(PARTED.search, line)) and any(map(UNIT.match, below))
    ]


def test_a_table_too_narrow_for_a_number_and_its_unit_parts_them_before_it_cuts_a_code() -> None:
    columns = [["lot", "BOS-001-S"], ["amount", "12345 mL"]]
    assert column_widths(columns, 19) == [9, 8]
    assert column_widths(columns, 17) == [9, 6]


@pytest.mark.parametrize("command", ["stock", "journal", "lot {essence}"])
def test_a_list_on_a_narrow_screen_becomes_cards(wordy: Shell, command: str) -> None:
    args = shlex.split(command.format(**wordy.codes))
    book = {"POTTLE_LEDGER": str(wordy.book), "NO_COLOR": "1"}
    narrow = shown_on(40, args, **book)
    assert max(map(len, narrow.splitlines())) <= 40
    assert sorted(CODE.findall(narrow)) == sorted(CODE.findall(wordy.run(*args).out))


def test_a_card_has_its_title_and_each_cell_behind_its_head(shell: Shell) -> None:
    book = {"POTTLE_LEDGER": str(shell.book), "NO_COLOR": "1"}
    lines = shown_on(40, ["stock", "--of", "spirit"], **book).splitlines()
    assert lines[:5] == [
        "NS-001-J",
        "  what         Neutral spirit",
        "  on hand      4.56 L",
        "  status       in stock",
        "Next: pottle due",
    ]


def test_a_cell_is_folded_in_its_column_and_figures_stand_at_the_right() -> None:
    columns = (
        ("lot", "OE-001-5", "A-1"),
        ("what", "Orange essence of May", "Oil"),
        ("mL", "5", ""),
    )
    console = Console(file=StringIO(), width=30)
    console.print(screen_table(columns, 30, ["mL"]))
    assert isinstance(console.file, StringIO)
    check_golden("cli/folded.txt", console.file.getvalue())


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(looked_at)
