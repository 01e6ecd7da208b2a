"""Making the map of lines and tests, once for the source and tests as they are, and keeping it.

Guarantees: a map is of a whole run of all tests on a copy without a fault, in which every test
passed; a kept one is renewed when the source or the tests are others. Needs the extra `mutants`.
"""

import json
import shutil
import subprocess
import sys
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

from tests.mutants.areas import SOURCES
from tests.mutants.mapping import Map, Timed
from tests.mutants.tree import ROOT, copy_to, environment, key_of, workspace

KEPT = ROOT / ".mutants"
"""Where the map is kept, outside of what git keeps."""
WORKERS = 2
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
    """The tests do not pass on the source without a fault, or not in a copy."""


def map_of(files: list[str], root: Path = ROOT, kept: Path = KEPT) -> Map:
    """Return the map of the project as it is, made now if it is not kept."""
    folder = kept / key_of(files, root)
    if not folder.is_dir():
        with workspace() as space:
            made = _noted(copy_to(space / "copy", files, root), space)
            shutil.rmtree(kept, ignore_errors=True)
            kept.mkdir()
            shutil.copytree(made, folder.with_suffix(".new"))
        folder.with_suffix(".new").replace(folder)
    return read(folder)


def _noted(copy: Path, space: Path) -> Path:
    """Run all tests and return the folder with what they ran."""
    notes, scratch = space / "notes", space / "scratch"
    notes.mkdir()
    scratch.mkdir()
    sources = "\n".join(f"  {copy / name}" for name in SOURCES if (copy / name).is_dir())
    (notes / "coveragerc").write_text(SETTINGS.format(folder=notes, sources=sources))
    command = [sys.executable, "-m", "pytest", "-q", "-n", str(WORKERS), "-p", "no:cacheprovider"]
    done = subprocess.run(
        [
            *command,
            "--ignore=tests/mutants",
            "-p",
            "mutants_map",
            f"--basetemp={scratch / 'pytest'}",
        ],
        cwd=copy,
        env=environment(copy, scratch, MUTANTS_NOTES=str(notes)),
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode:
        raise BrokenError(f"Not all tests pass on the source as it is:\n{done.stdout[-4000:]}")
    return _combined(notes, copy)


def _combined(notes: Path, copy: Path) -> Path:
    import coverage  # an extra, which the suite does without

    lines = coverage.Coverage(data_file=str(notes / "lines"), config_file=False, messages=False)
    lines.combine([str(notes)])
    lines.save()
    tests: dict[str, Any] = {}
    wide: dict[str, float] = {}
    for path in sorted(notes.glob("tests-*.json")):
        told = json.loads(path.read_text())
        tests |= {name: test for name, test in told["tests"].items() if test["passed"]}
        wide |= told["wide"]
    (notes / "tests.json").write_text(json.dumps({"copy": str(copy), "tests": tests, "wide": wide}))
    return notes


def read(folder: Path) -> Map:
    """Return a map that is kept in a folder."""
    import coverage

    told = json.loads((folder / "tests.json").read_text())
    lines = coverage.CoverageData(basename=str(folder / "lines"))
    lines.read()

    @cache
    def contexts(file: str) -> Mapping[int, list[str]]:
        by_line: Mapping[int, list[str]] = lines.contexts_by_lineno(f"{told['copy']}/{file}")
        return by_line

    tests = {
        name: Timed(test["seconds"], frozenset(test["uses"]))
        for name, test in told["tests"].items()
    }
    return Map(tests, contexts, told["wide"])
