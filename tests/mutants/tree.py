"""The files of the project, copies of them, and the environment in which tests run in a copy.

Guarantees: a copy holds what the project holds and nothing of a checkout's own, and its modules are
found before those that are installed. Tests try the same cases every time.
"""

import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from hashlib import sha256
from importlib.util import cache_from_source
from pathlib import Path

from tests.mutants.areas import MIGRATIONS, SOURCES

ROOT = Path(__file__).parents[2]
PLUGINS = Path(__file__).with_name("plugins")
MEMORY = Path("/dev/shm")
"""Where files are quick to write, on machines that have such a place."""
TELLING = ("ledger/", "reports/", "cli/", "sample_data/", "tests/", "pyproject.toml")
"""Files on which it depends which tests run a line."""
OWN = "tests/mutants/"
"""Files here, on which it does not depend."""
UNSET = ("POTTLE_LEDGER", "POTTLE_BY", "POTTLE_DEBUG", "POTTLE_GOLDEN", "PYTEST_ADDOPTS")


def project_files(root: Path = ROOT) -> list[str]:
    """Return the paths of all files that belong to the project."""
    command = ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
    told = subprocess.run(command, cwd=root, capture_output=True, text=True, check=True).stdout
    return sorted({name for name in told.split("\0") if name and (root / name).is_file()})


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


def key_of(files: Iterable[str], root: Path = ROOT) -> str:
    """Return a name for the source and tests as they are: it is another when one is changed."""
    found = sha256(sys.version.encode())
    telling = [name for name in files if name.startswith(TELLING) and not name.startswith(OWN)]
    found.update((PLUGINS / "mutants_map.py").read_bytes())
    for name in telling:
        found.update(name.encode() + sha256((root / name).read_bytes()).digest())
    return found.hexdigest()[:16]


@contextmanager
def workspace() -> Iterator[Path]:
    """Make an empty folder, in memory where there is some, and take it away again."""
    place = MEMORY if os.access(MEMORY, os.W_OK) else None
    with tempfile.TemporaryDirectory(
        prefix="mutants-", dir=place, ignore_cleanup_errors=True
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
