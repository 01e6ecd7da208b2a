"""Which test files are nearest to a module, and what a test file is made of.

Guarantees: a test file is another when it or anything of the tests that it imports is another.
Refuses: to look at the data that tests read; a changed table runs the same lines.
"""

from collections.abc import Iterable, Mapping
from hashlib import sha256
from pathlib import Path

from tests.held_by import HELD_BY
from tests.mirror import imported, mirror
from tests.mutants.making.tree import ROOT
from tests.mutants.telling.areas import SOURCES

ALIKE = {
    "ledger/": "tests/test_named.py",
    "ledger/store/read/": "tests/store/read/test_readers.py",
}
"""Tests that ask all modules of a folder alike: what each names, what its readers answer."""


def files_of_tests(files: Mapping[str, str]) -> list[str]:
    """Return the files that hold tests: test modules, and modules of the source with examples.

    Args:
        files: The modules of the project with their texts.
    """
    return sorted(
        name
        for name, text in files.items()
        if (name.split("/")[0] in SOURCES and ">>> " in text)
        or (name.startswith("tests/") and not name.startswith("tests/mutants/") and _is_test(name))
        or (name.startswith("tests/") and not name.startswith("tests/mutants/") and ">>> " in text)
    )


def _is_test(name: str) -> bool:
    return Path(name).name.startswith("test_")


def nearest(module: str, tests: Iterable[str]) -> set[str]:
    """Return the test files of a module: its mirror with what stands beside it, its examples.

    So are the tests that ask every module of its folder alike.

    >>> tests = ["tests/store/write/test_rows.py", "tests/test_house.py"]
    >>> sorted(nearest("ledger/store/write/rows.py", tests))
    ['tests/store/write/test_rows.py']
    """
    own = mirror(Path(module)).as_posix().removesuffix(".py")
    held = HELD_BY[module][0] if module in HELD_BY else ""
    alike = () if "/migrations/" in module else ALIKE.items()
    near = {module, held, f"{own}.py"} | {test for of, test in alike if module.startswith(of)}
    return {name for name in tests if name in near or name.startswith(f"{own}_")}


def keys(tests: Iterable[str], root: Path = ROOT) -> dict[str, str]:
    """Return for each test file a name for it as it is, with all of the tests that it imports."""
    hashes: dict[str, str] = {}

    def hash_of(name: str) -> str:
        if name not in hashes:
            hashes[name] = hash_text((root / name).read_text(encoding="utf-8"))
        return hashes[name]

    return {
        name: hash_text("".join(map(hash_of, sorted(_helpers(name, root) | {name}))))
        for name in tests
    }


def hash_text(text: str) -> str:
    """Return a short name for a text."""
    return sha256(text.encode()).hexdigest()[:16]


def _helpers(test: str, root: Path) -> set[str]:
    """Return the files of the tests that a test file imports, by itself or by others."""
    above = [parent / "conftest.py" for parent in Path(test).parents]
    ahead = {test, *(path.as_posix() for path in above if (root / path).is_file())}
    found: set[str] = set()
    while ahead:
        name = ahead.pop()
        found.add(name)
        ahead |= {
            other
            for other in imported(Path(name), root) - found
            if other.startswith("tests/") and not _is_test(other)
        }
    return found
