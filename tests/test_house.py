"""The house: the same rooms on every floor, a test for every module, nothing too large."""

import ast
from collections.abc import Iterator
from keyword import iskeyword
from pathlib import Path

import pytest

from cli.front import COMMANDS, module_of
from tests.held_by import ACROSS, BY_DOCTEST, HELD_BY
from tests.house import (
    ROOT,
    SOURCE,
    bodies_of,
    largest_folder,
    lines_of,
    python_files,
    row,
    spread,
    with_their_module,
)
from tests.mirror import OF_THEIR_OWN, imported, mirror

ROOMS = frozenset(
    {
        *("masters", "bench", "goods", "verdicts", "lots", "account", "glass"),
        *("causes", "recall", "evidence", "copies"),
    }
)
"""The rooms: one word each, one meaning each, the same on every floor."""
WITHOUT_COMMAND = {"account": "what a lot is, for the rules and for all the other rooms"}
"""Rooms in which no command stands."""
WITHOUT_SERVICE = {"guide": "pages that are kept with the program; they ask no book"}
"""Rooms of commands that nothing stands behind on the floors below."""
EXTRAS: dict[str, dict[str, str]] = {
    "ledger/service": {"desk": "one act of any verb: read, checked, recorded"},
    "reports/words": {
        "desk": "the answer to any verb and its next step",
        "entries": "any entry in a sentence",
    },
    "reports/json": {
        "kit": "amounts, times, a lot in brief, an error, the schema of all answers",
        "desk": "what any verb answers",
        "guide": "pages, which are in no book",
    },
    "reports/pdf": {"kit": "fonts, marks, rows and pages of every paper"},
    "cli/screens": {"guide": "pages, which are in no book"},
}
"""The floors, each with the folders that belong to all of its rooms."""
MOST_FILES, MOST_LINES = 25, 300
CROWDED = {
    "cli/commands": "one file a command, named as it is",
}
"""Folders that may hold more files, where one looks by a name that one knows."""
LONG = {"ledger/domain/evidence/merkle.py": "all of RFC 6962 that a book needs, in one piece"}
"""Files that may be longer."""
REPEATING = {
    "cli/screens/guide/guide.py": "how the command `guide` shows a page",
    "cli/screens/lots/lot.py": "how the command `lot` shows one",
    "cli/screens/recall/recall.py": "how the command `recall` goes",
    "ledger/domain/lots/lot.py": "one lot: the thing that the room is about",
    "reports/json/guide/guide.py": "what the command `guide` answers",
    "reports/json/lots/lot.py": "what the command `lot` answers",
    "reports/json/recall/recall.py": "what the command `recall` answers",
}
"""Files whose name repeats that of their room."""
ENDING_IN_ING = {
    "finding": "what a rule finds: a thing, not an act",
    "serving": "a glass as it is served: the command's own name",
    "standing": "where a recall stands: a noun",
    "mapping": "which column holds which field: a noun",
    "handling": "the family of rules about how goods are handled",
    "weighing": "what can be weighed of an amount",
    "waiting": "what a lot waits for",
    "evening": "an evening's work at the bench: a noun",
    "listing": "a list on a screen",
    "parsing": "how typer takes the words of a call apart",
    "wrapping": "how lines are wrapped on a screen",
}
"""Stems that end as an act does, and are none."""


def modules() -> list[Path]:
    """Return every module of the source, below the root; not packages and migrations."""
    found = python_files(ROOT / name for name in SOURCE)
    told = (path.relative_to(ROOT) for path in found if path.name != "__init__.py")
    return [path for path in told if "migrations" not in path.parts]


def folders_in(folder: str) -> set[str]:
    """Return the names of the folders with Python in them."""
    return {path.parent.name for path in (ROOT / folder).glob("*/*.py")}


def used_by(test: Path) -> set[str]:
    """Return the modules that a test calls, itself or by helpers; a command's test calls it."""
    found: set[str] = set()
    ahead = {test.as_posix()}
    while ahead:
        path = ahead.pop()
        new = imported(Path(path)) - found
        found |= new
        ahead |= {name for name in new if name.startswith("tests/")}
    if test.parent.as_posix() == "tests/cli/commands":
        name = test.stem.removeprefix("test_")
        found.add(f"{module_of(name).replace('.', '/')}.py")
    return found


def reaches(test: Path, module: str) -> bool:
    """Return whether a test calls a module, or something that is made of it."""
    called = used_by(test)
    own = [Path(path) for path in called if path.startswith(SOURCE)]
    return module in called or any(module in imported(path) for path in own)


def test_every_command_has_its_file_and_its_test() -> None:
    commands = {f"{name}{'_' if iskeyword(name) else ''}" for name in COMMANDS}
    files = {path.stem for path in modules() if path.parent.as_posix() == "cli/commands"}
    tests = {path.stem for path in (ROOT / "tests/cli/commands").glob("test_*.py")}
    assert files == commands
    assert tests == {f"test_{name}" for name in COMMANDS}


@pytest.mark.parametrize("command", COMMANDS)
def test_the_test_of_a_command_runs_it_and_reads_its_answer(command: str) -> None:
    text = (ROOT / f"tests/cli/commands/test_{command}.py").read_text(encoding="utf-8")
    words = [
        node.value
        for node in ast.walk(ast.parse(text))
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
    ]
    assert any(word == command or word.startswith(f"{command} ") for word in words)
    assert any(" " in word.strip() and word.strip().endswith((".", "!")) for word in words)


def test_rooms_are_the_same_on_every_floor() -> None:
    for floor, extras in EXTRAS.items():
        assert folders_in(floor) - extras.keys() <= ROOMS, floor
        assert extras.keys() <= folders_in(floor), floor
    assert folders_in("ledger/service") == ROOMS | EXTRAS["ledger/service"].keys()
    rooms = (ROOMS - WITHOUT_COMMAND.keys()) | WITHOUT_SERVICE.keys()
    assert {room for room, _ in COMMANDS.values()} == rooms
    views = {path.stem for path in modules() if path.parent.as_posix() == "reports/views"}
    assert views <= ROOMS


def test_the_tests_are_the_same_tree() -> None:
    source = {mirror(path).parent for path in modules()}
    tests = {path.relative_to(ROOT).parent for path in (ROOT / "tests").rglob("test_*.py")}
    others = {Path("tests"), *map(Path, OF_THEIR_OWN)}
    assert tests - others <= source
    for floor in EXTRAS:
        assert folders_in(f"tests/{floor.removeprefix('ledger/')}") <= folders_in(floor)


def test_every_module_has_its_test_or_is_named_with_a_reason() -> None:
    without = {path.as_posix() for path in modules() if not (ROOT / mirror(path)).is_file()}
    assert without == HELD_BY.keys() | set(BY_DOCTEST)


@pytest.mark.parametrize("module", HELD_BY)
def test_a_module_without_a_test_of_its_own_is_held_by_the_one_named(module: str) -> None:
    test, reason = HELD_BY[module]
    assert len(reason.split()) > 4
    assert (ROOT / test).is_file()
    assert reaches(Path(test), module)


@pytest.mark.parametrize("module", BY_DOCTEST)
def test_a_module_that_its_doctest_holds_has_one(module: str) -> None:
    assert ">>> " in (ROOT / module).read_text(encoding="utf-8")


def test_every_test_is_of_a_module_or_is_named_with_a_reason() -> None:
    assert set(_of_no_module()) == ACROSS.keys()
    for folder in OF_THEIR_OWN:
        assert list((ROOT / folder).glob("test_*.py")), folder


def _of_no_module() -> Iterator[str]:
    """Yield the tests that are named neither as a module beside them nor as a side of one."""
    known = {mirror(path) for path in modules()}
    for found in (ROOT / "tests").rglob("test_*.py"):
        path = found.relative_to(ROOT)
        names = [path.stem, *_beginnings(path.stem)]
        is_side = any(path.with_name(f"{name}.py") in known for name in names)
        if not is_side and path.parent.as_posix() not in OF_THEIR_OWN:
            yield path.as_posix()


def _beginnings(stem: str) -> list[str]:
    """Return what a name begins with, by its words.

    >>> _beginnings("test_verify_form")
    ['test', 'test_verify']
    """
    words = stem.split("_")
    return ["_".join(words[:number]) for number in range(1, len(words))]


def test_no_folder_is_crowded_and_no_file_is_long() -> None:
    found = modules()
    folders = {path.parent.as_posix() for path in found}
    sizes = {folder: sum(path.parent.as_posix() == folder for path in found) for folder in folders}
    assert {folder for folder, files in sizes.items() if files > MOST_FILES} == CROWDED.keys()
    lines = {path.as_posix(): lines_of((ROOT / path).read_text(encoding="utf-8")) for path in found}
    assert {path for path, count in lines.items() if count > MOST_LINES} == LONG.keys()


def test_a_file_does_not_repeat_the_name_of_its_room() -> None:
    repeating = {
        path.as_posix()
        for path in modules()
        if {path.parent.name, path.parent.name.removesuffix("s")} & set(path.stem.split("_"))
    }
    assert repeating == REPEATING.keys()


def test_a_file_is_named_by_a_noun() -> None:
    assert {path.stem for path in modules() if path.stem.endswith("ing")} == ENDING_IN_ING.keys()


SMALL = '''\
"""A module."""


def first():
    """Say what it does,

    at some length.
    """
    a = 1  # a comment

    return a


async def second():
    """Only a docstring."""


class Third:
    def method(self):
        def inner():
            return "# no comment"

        return inner
'''
"""A file of 23 lines with one comment and four functions."""


def test_the_house_is_measured_by_what_its_words_say(tmp_path: Path) -> None:
    commands, tests = tmp_path / "cli" / "commands", tmp_path / "tests"
    for folder in (commands, tests, tmp_path / "ledger", tmp_path / "reports"):
        folder.mkdir(parents=True)
    for name in ("add", "import_", "__init__"):
        (commands / f"{name}.py").write_text(SMALL)
    (tests / "test_add.py").write_text(SMALL * 100)
    assert row(tmp_path, ["add", "import", "rest"]) == [
        ("source / test lines, thousands", "0.1 / 2.3"),
        ("file lines, median / 90 % / longest", "23 / 23 / 23"),
        ("function bodies, median / 90 % / longest", "2 / 4 / 4"),
        ("largest flat folder, files", "2 (cli/commands)"),
        ("comments per 100 lines", "4.3"),
        ("commands with a module of their own name", "2 of 3"),
    ]


def test_a_body_is_its_statements_without_its_docstring() -> None:
    assert sorted(bodies_of(SMALL)) == [0, 1, 3, 4]


def test_nine_of_ten_are_no_larger_than_the_second_size() -> None:
    assert spread([5]) == (5, 5, 5)
    assert spread(range(1, 12)) == (6, 10, 11)


def test_files_are_counted_side_by_side_and_commands_by_their_names(tmp_path: Path) -> None:
    for name in ("a/one.py", "a/two.py", "b/three.py", "a/deep/four.py"):
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).touch()
    assert largest_folder(python_files([tmp_path])) == (2, tmp_path / "a")
    assert with_their_module(["one", "three"], tmp_path / "a") == 1
