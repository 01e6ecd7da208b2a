"""What the README tells a newcomer works as it stands."""

import re
import subprocess
import sys
from pathlib import Path

import pytest

from tests.short_path import README, blocks, first_batch, main, play

ROOT = README.parent


@pytest.fixture
def pottle(tmp_path: Path) -> Path:
    """Return the command of this checkout."""
    command = tmp_path / "bin" / "pottle"
    command.parent.mkdir()
    command.write_text(
        f'#!/bin/sh\nPYTHONPATH="{ROOT}" exec "{sys.executable}" -m cli.program "$@"\n'
    )
    command.chmod(0o755)
    return command


def test_the_first_batch_by_hand_runs_block_by_block(tmp_path: Path, pottle: Path) -> None:
    by_hand = [block for block in blocks() if "venv" not in block]
    done = play(by_hand, tmp_path, pottle)
    assert (done.returncode, done.stderr) == (0, "")
    assert (len(by_hand), by_hand[:3]) == (5, first_batch())
    assert (tmp_path / "record.pdf").read_bytes().startswith(b"%PDF")


def test_a_command_that_does_not_play_the_first_batch_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    command = tmp_path / "pottle"
    command.write_text("#!/bin/sh\necho Something is open. >&2\n")
    command.chmod(0o755)
    assert main(str(command)) == 1
    first, second, *_ = capsys.readouterr().out.splitlines()
    assert first.endswith(": the first batch failed.")
    assert second == "Something is open."


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
    text = README.read_text(encoding="utf-8")
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
