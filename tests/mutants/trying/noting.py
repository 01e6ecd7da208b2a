"""Noting which lines test files run: they are run whole on a copy without a fault.

Guarantees: a test that does not pass there is told and left out, since it can tell of no fault.
Needs the extra `mutants`.
"""

import json
import subprocess
import sys
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

from tests.mutants.making.tree import ROOT, copy_to, environment, workspace
from tests.mutants.telling.areas import SOURCES
from tests.mutants.trying.kept import Kept

KEPT = ROOT / ".mutants" / "map.db"
"""Where the map is kept, outside of what git keeps."""
PASSED, FAILED = 0, 1
"""The exit codes of pytest when all tests passed, and when some did not."""
SETTINGS = """\
[run]
core = ctrace
parallel = true
data_file = {folder}/lines
source_dirs =
{sources}
omit = */migrations/*
context = ${{MUTANTS_CONTEXT-}}
disable_warnings = no-data-collected, module-not-imported, module-not-measured, couldnt-parse
"""


class BrokenError(Exception):
    """The tests cannot be run on the source without a fault."""


def renew(
    kept: Kept, tests: Iterable[str], files: Iterable[str], cores: int, root: Path = ROOT
) -> None:
    """Note what test files run and keep it.

    Args:
        kept: The map.
        tests: The test files.
        files: All files of the project.
        cores: How many processes run them.
        root: Where the project is.
    """
    chosen = sorted(tests)
    if not chosen:
        return
    print(f"noting what {len(chosen)} test files run", file=sys.stderr, flush=True)
    with workspace() as space:
        kept.store(_noted(copy_to(space / "copy", files, root), space, chosen, cores), chosen)


def _noted(copy: Path, space: Path, tests: Sequence[str], cores: int) -> Path:
    """Run test files and return the folder with what they ran."""
    notes, scratch = space / "notes", space / "scratch"
    notes.mkdir()
    scratch.mkdir()
    sources = "\n".join(f"  {copy / name}" for name in SOURCES if (copy / name).is_dir())
    (notes / "coveragerc").write_text(SETTINGS.format(folder=notes, sources=sources))
    command = [sys.executable, "-m", "pytest", "-q", "-n", str(cores), "-p", "no:cacheprovider"]
    own = ["-p", "mutants_map", f"--basetemp={scratch / 'pytest'}", *tests]
    done = subprocess.run(
        [*command, *own],
        cwd=copy,
        env=environment(copy, scratch, MUTANTS_NOTES=str(notes)),
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode not in (PASSED, FAILED):
        raise BrokenError(f"The tests cannot be run as they are:\n{done.stdout[-4000:]}")
    combine(notes, copy)
    return notes


def combine(notes: Path, copy: Path) -> None:
    """Put together what several processes noted: `lines` and the tests."""
    import coverage  # an extra, which the suite does without

    lines = coverage.Coverage(data_file=str(notes / "lines"), config_file=False, messages=False)
    lines.combine([str(notes)])
    lines.save()
    tests: dict[str, Any] = {}
    wide: dict[str, float] = {}
    for path in sorted(notes.glob("tests-*.json")):
        told = json.loads(path.read_text())
        tests |= told["tests"]
        wide |= told["wide"]
    for name in (name for name, test in tests.items() if not test["passed"]):
        print(f"left out, as it does not pass without a fault: {name}", file=sys.stderr)
    passed = {name: test for name, test in tests.items() if test["passed"]}
    told = {"copy": str(copy), "tests": passed, "wide": wide}
    (notes / "tests.json").write_text(json.dumps(told))
