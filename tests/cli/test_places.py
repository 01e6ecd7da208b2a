"""The place of a file is looked at before anything is read; each command's test asks its own."""

from pathlib import Path
from typing import Any

import pytest
import typer.main
from typer._click import Context

from cli.main import app
from tests.cli.cases import check_refused
from tests.cli.places import FOLDERS, WRITING
from tests.cli.schemas import Verb, verb_of, verbs
from tests.cli.shell import Shell

AFTER_BOOK = ("label none --kind hold --out", "label none --kind case --out", "record none --out")
"""Those for which the book is opened before; what they name is not looked for."""
READ = {"--layouts", "--check", "--book"}
"""Options of files that are read."""


@pytest.fixture
def nowhere(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shell:
    """No book, and a file that is in the way."""
    monkeypatch.chdir(tmp_path)
    Path("there.csv").touch()
    return Shell(tmp_path / "none.db")


def files_of(verb: Verb) -> set[str]:
    """Return the options of files that a command writes, and may be asked to write over."""
    group: Any = typer.main.get_command(app)
    command = group.get_command(Context(group), verb[0])
    parts = command.commands[verb[1]].params if len(verb) > 1 else command.params
    names = {part.opts[0]: type(part.type).__name__ for part in parts}
    paths = {name for name, kind in names.items() if kind == "TyperPath" and name[0] == "-"}
    return paths - READ if "--force" in names else set()


def test_every_command_that_may_be_forced_to_write_over_a_file_is_among_them() -> None:
    held = {(verb_of(line), line.split()[-1]) for line in (*WRITING.splitlines(), *AFTER_BOOK)}
    asked = {(verb, option) for verb in verbs() for option in files_of(verb)}
    folders = {(verb_of(line), "--out") for line, *_ in FOLDERS} | {(("export",), "--csv")}
    assert asked <= held | folders


def test_a_recall_wants_a_folder_whose_own_folder_is_there(nowhere: Shell) -> None:
    for place, told in (
        ("there.csv", "there.csv is a file, not a folder."),
        ("none/pack", "There is no folder none."),
    ):
        answer = nowhere.line(f"recall none --drill --out {place}")
        assert (answer.exit_code, answer.complaints[0]) == (5, told)


@pytest.mark.parametrize("line", AFTER_BOOK)
def test_a_file_that_is_there_is_told_of_before_a_lot_is_missed(line: str, bare: Shell) -> None:
    Path("there.csv").touch()
    problem = (
        "There is a file there.csv already; it was left as it is.",
        "Give another name with --out, or --force to write over it.",
    )
    check_refused((f"{line} there.csv", 5, problem), bare)
