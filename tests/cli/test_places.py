"""The place of a file that is asked for is looked at before anything is read or recorded.

There is no book, so whatever was read first would be missed first.
"""

from pathlib import Path
from typing import Any

import pytest
import typer.main
from typer._click import Context

from cli.main import app
from tests.cli.cases import check_refused
from tests.cli.schemas import Verb, verb_of, verbs
from tests.cli.shell import Shell

WRITING = """\
chart none --out
compare none --out
compare none --csv
complaints --csv
cost none --out
due --csv
due --ics
export --epcis
export --key-data
formula new oil --out
formula show none --out
import none --like
journal --csv
list sales --csv
packet none --out
prove none --out
seal --out
serving none --out
sheet none --out
sheet --formula none --out
sheet --blank-csv
start none 1L --out
stock --csv
stock --low none --csv
stock --spirit --csv
stock --spirit --out
trace none --csv
trace none --out
trial plan none --try rest=1h/2h --product none --kind essence --out
trial sheet none --out
"""
"""Commands up to the option of the file that they write; what they name is nowhere."""
FOLDERS = (
    ("recall none --because x --out", "balance.csv", "folder with --out, or --force"),
    ("recall none --drill --out", "recall.pdf", "folder with --out, or --force"),
    ("formula samples", "orange-syrup.toml", "folder, or --force"),
)
"""Commands up to the folder that they write into, a file that would stand there, what to do."""
OTHER_OPTION = {"sheet --blank-csv": "Give another name, or --force to write over it."}
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


@pytest.mark.parametrize("line", WRITING.splitlines())
def test_a_file_that_is_there_is_told_of_before_a_book_is_missed(line: str, nowhere: Shell) -> None:
    option = line.split()[-1]
    todo = OTHER_OPTION.get(line, f"Give another name with {option}, or --force to write over it.")
    answer = nowhere.line(f"{line} there.csv")
    told = ["There is a file there.csv already; it was left as it is.", f"  {todo}"]
    assert (answer.exit_code, answer.out, answer.complaints) == (5, "", told)
    if line not in OTHER_OPTION:
        over = nowhere.line(f"{line} there.csv --force")
        assert over.complaints[0] in (
            f"There is no book at {nowhere.book}.",
            "The file none could not be read: No such file or directory.",
        )
    assert Path("there.csv").read_bytes() == b""


def test_every_command_that_may_be_forced_to_write_over_a_file_is_among_them() -> None:
    held = {(verb_of(line), line.split()[-1]) for line in (*WRITING.splitlines(), *AFTER_BOOK)}
    asked = {(verb, option) for verb in verbs() for option in files_of(verb)}
    folders = {(verb_of(line), "--out") for line, *_ in FOLDERS} | {(("export",), "--csv")}
    assert asked <= held | folders


@pytest.mark.parametrize(("line", "name", "other"), FOLDERS)
def test_a_folder_with_one_of_its_files_is_told_of_before_a_book_is_missed(
    line: str, name: str, other: str, nowhere: Shell
) -> None:
    Path("pack").mkdir()
    Path("pack", name).touch()
    answer = nowhere.line(f"{line} pack")
    assert (answer.exit_code, answer.out) == (5, "")
    assert [text.strip() for text in answer.complaints] == [
        f"There is a file pack/{name} already; it was left as it is.",
        f"Give another {other} to write over {'it' if 'samples' in line else 'them'}.",
    ]
    assert [path.name for path in Path("pack").iterdir()] == [name]


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
