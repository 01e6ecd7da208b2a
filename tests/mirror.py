"""Where the test of a module stands, which folders mirror none, and which files a file imports."""

import ast
from functools import cache
from pathlib import Path

from tests.house import ROOT, SOURCE


def mirror(module: Path) -> Path:
    """Return where the test of a module stands.

    >>> mirror(Path("ledger/service/bench/add.py")).as_posix()
    'tests/service/bench/test_add.py'
    >>> mirror(Path("cli/commands/import_.py")).as_posix()
    'tests/cli/commands/test_import.py'
    """
    folders = module.parts[:-1]
    if folders[0] == "ledger":
        folders = folders[1:]
    return Path("tests", *folders, f"test_{module.stem.rstrip('_')}.py")


def imported(path: Path, root: Path = ROOT) -> set[str]:
    """Return the modules that a file imports, wherever in it, as paths below the root."""
    return {name for name in _imported(path, root) if (root / name).is_file()}


@cache
def _imported(path: Path, root: Path) -> frozenset[str]:
    found = set()
    for node in ast.walk(ast.parse((root / path).read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module:
            found |= {node.module, *(f"{node.module}.{item.name}" for item in node.names)}
        elif isinstance(node, ast.Import):
            found |= {item.name for item in node.names}
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            found |= {node.value} if node.value.startswith(SOURCE) else set()
    paths = (name.replace(".", "/") for name in found)
    return frozenset(file for path in paths for file in (f"{path}.py", f"{path}/__init__.py"))


OF_THEIR_OWN = {
    "tests/kept": "how texts are kept whole and compared, and what they are made of",
    "tests/calibration": "what the forecast is calibrated on, and a test that it comes out as kept",
    "tests/claims": "what README, guide and lists of law claim, and tests that hold it",
    "tests/benchmarks": "measures that are run by hand, and a test of their books",
    "tests/benchmarks/faults": "faults laid under commands by hand, and a test of the disk",
    "tests/answers": "every command asked of many books, its answers kept whole",
    "tests/model": "a second model of what is in the jars, held to random books",
    "tests/mutants/making": "the places of small faults put into the source by hand, and tests",
    "tests/mutants/telling": "what is told of such faults, and tests of it",
    "tests/mutants/trying": "how tests are run on such faults, and tests of that",
    "tests/fuzz": "readers of text from outside, run by hand for long and here for a moment",
    "tests/store/contract": "what every engine must do, run once for each of them",
}
"""Folders of tests that mirror nothing."""
