"""The program says which package it met where one of its own should be."""

import gc
import os
import runpy
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from cli.program import INSIDE, OURS, run, stranger

ROOT = Path(__file__).parents[2]


def test_its_own_packages_are_no_strangers() -> None:
    assert stranger() is None


@pytest.mark.parametrize("name", ["reports", "ledger"])
def test_a_package_of_another_program_is_named_at_the_start(name: str, tmp_path: Path) -> None:
    other = tmp_path / name
    other.mkdir()
    (other / "__init__.py").write_text("")
    script = "import sys, cli.program; sys.path.insert(0, sys.argv.pop(1)); cli.program.run()"
    done = subprocess.run(
        [sys.executable, "-P", "-c", script, str(tmp_path)],
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
    )
    assert done.returncode == INSIDE
    assert done.stderr.splitlines() == [
        f"pottle met another package called {name} at {other} in place of its own.",
        "  Give it an environment of its own: pipx install pottle, or uv tool install pottle.",
    ]


def test_where_ours_is_hidden_whole_python_names_the_module_it_looked_for(tmp_path: Path) -> None:
    """What DEVELOPERS.md says of it: no line of the program runs, so none can say more."""
    (tmp_path / "cli").mkdir()
    (tmp_path / "cli" / "__init__.py").write_text("")
    done = subprocess.run(
        [sys.executable, "-P", "-c", "from cli.program import run; run()"],
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "PYTHONPATH": os.pathsep.join((str(tmp_path), str(ROOT)))},
    )
    assert done.stderr.splitlines()[-1] == "ModuleNotFoundError: No module named 'cli.program'"


def test_it_runs_the_commands_ends_at_once_when_interrupted_and_looks_for_no_garbage(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    done: list[object] = []
    monkeypatch.setattr("cli.main.run", lambda: done.append("run"))
    monkeypatch.setattr(signal, "signal", lambda *told: done.append(told))
    monkeypatch.setattr(gc, "disable", lambda: done.append("no garbage"))
    run()
    assert done == [(signal.SIGINT, signal.SIG_DFL), "no garbage", "run"]
    runpy.run_path(str(ROOT / "cli" / "program.py"), run_name="__main__")
    assert done[3:] == done[:3]


def test_each_package_is_known_by_a_file_that_it_has() -> None:
    assert all((ROOT / name / mark).is_file() for name, mark in OURS.items())
