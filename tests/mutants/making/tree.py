"""The files of the project, copies of them, and the environment in which tests run in a copy.

Guarantees: a copy holds what the project holds and nothing of a checkout's own, and its modules are
found before those that are installed. Tests try the same cases every time.
"""

import os
import shutil
import tempfile
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from importlib.util import cache_from_source
from pathlib import Path

from tests.memory import in_memory
from tests.mutants.telling.areas import MIGRATIONS, SOURCES

ROOT = Path(__file__).parents[3]
PLUGINS = ROOT / "tests/mutants/trying/plugins"
FOLDERS = (*SOURCES, "sample_data", "tests")
"""Where the files of the project are; beside them stand its pages and `pyproject.toml`."""
UNSET = ("POTTLE_LEDGER", "POTTLE_BY", "POTTLE_DEBUG", "POTTLE_GOLDEN", "PYTEST_ADDOPTS")


def project_files(root: Path = ROOT) -> list[str]:
    """Return the paths of all files of the project, without those that are compiled."""
    below = (path for name in FOLDERS for path in (root / name).rglob("*"))
    return sorted(
        path.relative_to(root).as_posix()
        for path in (*below, *root.glob("*.md"), root / "pyproject.toml")
        if path.is_file() and "__pycache__" not in path.parts
    )


def mutable(files: Iterable[str], under: str = "") -> list[str]:
    """Return the modules in which mutants are made, of a file or folder if one is named."""
    prefix = under.rstrip("/")
    return [
        name
        for name in files
        if name.endswith(".py")
        and name.split("/")[0] in SOURCES
        and not name.startswith(MIGRATIONS)
        and (not prefix or name == prefix or name.startswith(f"{prefix}/"))
    ]


@contextmanager
def workspace() -> Iterator[Path]:
    """Make an empty folder, in memory where there is some, and take it away again."""
    with tempfile.TemporaryDirectory(
        prefix="mutants-", dir=in_memory(), ignore_cleanup_errors=True
    ) as name:
        yield Path(name)


def copy_to(folder: Path, files: Iterable[str], root: Path = ROOT) -> Path:
    """Copy files into a folder, and return it."""
    for name in files:
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copy2(root / name, folder / name)
    return folder


@contextmanager
def changed_file(path: Path, text: str) -> Iterator[None]:
    """Write another text into a module; what was compiled of the one or the other is forgotten."""
    before, compiled = path.read_bytes(), Path(cache_from_source(str(path)))
    try:
        compiled.unlink(missing_ok=True)
        path.write_text(text, encoding="utf-8", newline="")
        yield
    finally:
        path.write_bytes(before)
        compiled.unlink(missing_ok=True)


def environment(copy: Path, scratch: Path, **own: str) -> dict[str, str]:
    """Return the environment for tests in a copy."""
    kept = {name: value for name, value in os.environ.items() if name not in UNSET}
    return {
        **kept,
        "CI": "1",  # hypothesis tries the same examples each time
        "PYTHONHASHSEED": "0",
        "PYTHONPATH": os.pathsep.join((str(copy), str(PLUGINS))),
        "MUTANTS_SOURCES": " ".join(name for name in SOURCES if (copy / name).is_dir()),
        "TMPDIR": str(scratch),
        **own,
    }
