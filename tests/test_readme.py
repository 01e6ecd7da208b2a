"""What the README tells a newcomer works as it stands."""

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
BLOCK = re.compile(r"```sh\n(.*?)```", re.DOTALL)


def blocks() -> list[str]:
    return BLOCK.findall((ROOT / "README.md").read_text(encoding="utf-8"))


@pytest.fixture
def shell(tmp_path: Path) -> dict[str, str]:
    """Return an environment in which `pottle` is the command of this checkout."""
    folder = tmp_path / "bin"
    folder.mkdir()
    command = folder / "pottle"
    command.write_text(f'#!/bin/sh\nexec "{sys.executable}" -m cli.program "$@"\n')
    command.chmod(0o755)
    env = {name: value for name, value in os.environ.items() if not name.startswith("POTTLE")}
    return {**env, "PATH": f"{folder}:{env['PATH']}", "PYTHONPATH": str(ROOT)}


def test_the_first_batch_by_hand_runs_block_by_block(tmp_path: Path, shell: dict[str, str]) -> None:
    by_hand = [block for block in blocks() if "venv" not in block]
    script = "set -e\n" + "\n".join(by_hand)
    done = subprocess.run(
        ["bash", "-c", script], cwd=tmp_path, env=shell, capture_output=True, text=True, check=False
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert len(by_hand) == 5
    assert (tmp_path / "record.pdf").read_bytes().startswith(b"%PDF")


def test_the_batch_itself_takes_ten_commands() -> None:
    batch = next(block for block in blocks() if block.startswith("pottle start"))
    assert len(batch.strip().splitlines()) == 10


def test_each_of_the_two_first_commands_is_one_line_that_sets_itself_up() -> None:
    first, second = blocks()[:2]
    for block in (first, second):
        assert block.count("\n") == 1
        assert block.startswith("python3 -m venv .venv && .venv/bin/pip install")
    assert "pottle demo" in first
    assert "-m pytest" in second


def test_every_command_the_readme_names_is_one_of_ours() -> None:
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    named = set(re.findall(r"`?pottle ([a-z]+)\b", text))
    done = subprocess.run(
        [sys.executable, "-m", "cli.program", "--help"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    ours = set(re.findall(r"^  ([a-z]+) ", done.stdout, re.MULTILINE))
    assert named
    assert named <= ours
