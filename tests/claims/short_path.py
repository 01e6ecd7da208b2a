"""The README's first batch by hand, as it stands: ``python -m tests.claims.short_path POTTLE``.

Guarantees: from an empty folder to a book that verifies, with the command that is named, by the
standard library alone, so that it plays wherever the program is installed without its tests.
Refuses: a command that fails, and one that says anything on standard error; a file or a server that
is left open is said there from Python 3.13 on.
"""

import os
import platform
import re
import subprocess
import sys
import time
from collections.abc import Sequence
from pathlib import Path
from tempfile import TemporaryDirectory

README = Path(__file__).parents[2] / "README.md"
_COMMAND = re.compile(r"^(?:\$ )?((?:export|pottle) .*)$", re.MULTILINE)
_FIRST, _LAST = "export POTTLE_BY=AB", "pottle verify"


def first_batch() -> list[str]:
    """Return the README's commands from setting up to looking at what the book knows."""
    found = _COMMAND.findall(README.read_text(encoding="utf-8"))
    return found[found.index(_FIRST) : found.index(_LAST) + 1]


def play(commands: Sequence[str], folder: Path, pottle: Path) -> subprocess.CompletedProcess[str]:
    """Play commands in a folder, `pottle` being the one at a path, until one of them fails."""
    env = {name: value for name, value in os.environ.items() if not name.startswith("POTTLE")}
    env["PATH"] = f"{pottle.parent}:{env['PATH']}"
    env["PYTHONWARNINGS"] = "always::ResourceWarning"
    script = "set -e\n" + "\n".join(commands)
    return subprocess.run(
        ["bash", "-c", script], cwd=folder, env=env, capture_output=True, text=True, check=False
    )


def main(pottle: str) -> int:
    """Play the first batch in an empty folder; print a line of how it went and return 0 or 1."""
    began, python = time.perf_counter(), platform.python_version()
    with TemporaryDirectory(prefix="pottle-") as folder:
        done = play(first_batch(), Path(folder), Path(pottle).absolute())
    if done.returncode or done.stderr:
        print(f"Python {python}: the first batch failed.\n{done.stdout}{done.stderr}", end="")
        return 1
    taken = time.perf_counter() - began
    print(f"Python {python}: installed, and the first batch played in {taken:.0f} s.")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
