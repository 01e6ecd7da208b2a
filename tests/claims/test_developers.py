"""What DEVELOPERS.md and the docstrings say of the house is so: names are there, rooms agree."""

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from cli.front import COMMANDS

ROOT = Path(__file__).parents[2]
PAGE = ROOT / "DEVELOPERS.md"
KEYS = "\n## Answers for machines\n"
"""Below this head stand tables of keys, whose rows are as long as they are."""
FLOORS = ("ledger", "reports", "cli", "tests")
ROOMS = "| room | what happens there | commands |"
MOST_CHARACTERS = 140

_FENCE = re.compile(r"^```.*?^```$", re.M | re.S)
_FLOORS = "|".join(FLOORS)
_PATH = re.compile(
    rf"(?<![\w/.])(?:(?:{_FLOORS}|sample_data)/[\w/.-]*\w/?|(?:\w+/)*\w+\.(?:py|sql))"
)
_DOTTED = re.compile(rf"(?<![\w/.])(?:{_FLOORS})(?:\.(?!NAME)[a-zA-Z_]\w*)+(?![\w(/.])")
_STEP = re.compile(r"^\d+\. `([\w/]+\.py)`((?:,? (?:and )?`\w[\w.]*`)+)", re.M)
_ROOM = re.compile(r"^\| `(\w+)` \| [^|]+ \| ([a-z ]+) \|$", re.M)


def page() -> str:
    """Return what the page says above its keys, without what stands in fences."""
    return _FENCE.sub("", PAGE.read_text("utf-8").partition(KEYS)[0])


@cache
def names_in(module: Path) -> frozenset[str]:
    """Return what a module defines: its functions, classes and constants, and those of classes."""
    names = set()
    for node in ast.walk(ast.parse(module.read_text("utf-8"))):
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            names.add(node.name)
        elif isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store):
            names.add(node.id)
    return frozenset(names)


def module_of(parts: list[str]) -> Path | None:
    """Return the file of a module, or the folder of a package, named by its parts."""
    place = ROOT.joinpath(*parts)
    return next((path for path in (place.with_suffix(".py"), place) if path.exists()), None)


def is_there(dotted: str) -> bool:
    """Return whether a dotted name is a module, or something that one defines."""
    parts = dotted.split(".")
    if module_of(parts):
        return True
    for cut in range(len(parts) - 1, 0, -1):
        module = module_of(parts[:cut])
        if module and module.is_file():
            return set(parts[cut:]) <= names_in(module)
    return False


def is_path(name: str, beside: Path = ROOT) -> bool:
    """Return whether a path is there, from the root or from the folder it is named in."""
    return (ROOT / name).exists() or (beside / name).exists()


def untrue(text: str, beside: Path = ROOT) -> set[str]:
    """Return the paths and dotted names of a text that are not there."""
    paths = {name for name in _PATH.findall(text) if not is_path(name, beside)}
    return paths | {name for name in _DOTTED.findall(text) if not is_there(name)}


def docstrings() -> Iterator[tuple[str, Path, str]]:
    """Yield the docstrings and comments of the source, each module's as one text.

    Only of modules that name anywhere, be it in their code, what is not there.
    """
    for floor in FLOORS:
        for module in sorted((ROOT / floor).rglob("*.py")):
            source = module.read_text("utf-8")
            if not untrue(source, module.parent):
                continue
            strings = (
                node.value.value
                for node in ast.walk(ast.parse(source))
                if isinstance(node, ast.Expr)
                and isinstance(node.value, ast.Constant)
                and isinstance(node.value.value, str)
            )
            said = "\n".join([*strings, *re.findall(r"(?:^|  )# .*$", source, re.M)])
            yield (
                str(module.relative_to(ROOT)),
                module.parent,
                re.sub(r"^ *>>> .*$", "", said, flags=re.M),
            )


@pytest.mark.parametrize(
    "name",
    ["ledger.store.gone", "ledger/store/gone.py", "cli.kit.call.gone", "gone.py", "tests/gone/"],
)
def test_a_name_that_is_not_there_is_seen(name: str) -> None:
    assert untrue(f"As `{name}` says.") == {name}


@pytest.mark.parametrize(
    "name",
    [
        "ledger.store.write.recorder.append",
        "cli.kit.call.Call.writer",
        "tests/golden",
        "cli/front.py",
    ],
)
def test_a_name_that_is_there_passes(name: str) -> None:
    assert not untrue(f"As `{name}` says.")


def test_every_module_and_path_that_the_page_names_is_there() -> None:
    assert not untrue(page())


def test_every_module_that_a_docstring_names_is_there() -> None:
    wrong = {module: untrue(text, folder) for module, folder, text in docstrings()}
    assert {module: names for module, names in wrong.items() if names} == {}


def test_no_line_of_the_page_is_long() -> None:
    lines = PAGE.read_text("utf-8").partition(KEYS)[0].splitlines()
    assert [line for line in lines if len(line) > MOST_CHARACTERS] == []


def test_every_step_of_the_walk_is_a_function_that_is_there() -> None:
    steps = _STEP.findall(page())
    assert len(steps) >= 12
    for module, named in steps:
        for name in re.findall(r"`([\w.]+)`", named):
            assert set(name.split(".")) <= names_in(ROOT / module), f"{module} {name}"


def test_the_rooms_of_the_page_have_the_commands_of_the_front_door() -> None:
    rooms = _ROOM.findall(page().partition(ROOMS)[2])
    told = {(room, command) for room, commands in rooms for command in commands.split()}
    assert told == {(room, command) for command, (room, _) in COMMANDS.items()}
