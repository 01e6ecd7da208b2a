"""The first batch that is played on other Pythons is the README's, and what goes wrong is told."""

from pathlib import Path

import pytest

from tests.claims.short_path import first_batch, main


def command(folder: Path, script: str) -> str:
    """Write a `pottle` that does nothing but a line of shell."""
    path = folder / "pottle"
    path.write_text(f"#!/bin/sh\n{script}\n")
    path.chmod(0o755)
    return str(path)


def test_every_command_is_played_from_setting_up_to_verifying(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    heard = tmp_path / "heard"
    assert main(command(tmp_path, f'echo "$POTTLE_BY $1" >> "{heard}"')) == 0
    assert capsys.readouterr().out.startswith("Python 3.")
    told = [line.split()[1] for line in first_batch()[1:]]
    assert heard.read_text().splitlines() == [f"AB {word}" for word in told]
    assert (told[0], told[-1]) == ("init", "verify")
    assert {"receive", "start", "add", "filter", "release", "stock", "trace", "record"} < {*told}


@pytest.mark.parametrize("script", ["echo Open. >&2", "echo Open. >&2; false"])
def test_a_command_that_fails_or_complains_is_told(
    script: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(command(tmp_path, script)) == 1
    first, second, *_ = capsys.readouterr().out.splitlines()
    assert first.endswith(": the first batch failed.")
    assert second == "Open."
