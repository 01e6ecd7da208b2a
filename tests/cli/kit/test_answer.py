"""Answers of commands that record: lines or JSON, never both, with what comes next."""

from pathlib import Path

from reports.words.desk.next_step import DUE, FIRST_MATERIAL
from tests.cli.shell import Shell


def test_an_answer_is_lines_or_json_with_the_same_next_step(shell: Shell) -> None:
    told = shell.line("note {essence} Good.")
    plain = shell.line("note {essence} Good. --json").json
    assert told.lines[0] == "Recorded 39, note OE-001-5: Good."
    assert (plain["entry"], f"Next: {plain['next']}") == (40, told.lines[-1])


def test_the_first_material_is_the_next_step_only_where_there_is_none_yet(shell: Shell) -> None:
    new = Shell(Path("new.db"))
    assert new.run("init", "--house", "Wren & Co", "--currency", "EUR").exit_code == 0
    for book, who, step in ((new, "AB", FIRST_MATERIAL), (shell, "EF", DUE)):
        assert book.run("person", "add", who, "Ada Notreal").lines[-1] == f"Next: {step}"


def test_the_place_of_a_paper_stands_below_what_was_recorded(shell: Shell) -> None:
    lines = shell.line("label {packed} --out labels.pdf").lines
    assert lines[:2] == [
        "Recorded 39, labels BOS-001-S: 15 printed.",
        "The labels are in labels.pdf.",
    ]
    plain = shell.line("label {packed} --out more.pdf --json").json
    assert plain["path"] == "more.pdf"
