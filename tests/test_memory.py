"""Tests put their files into memory where there is some, and nowhere else than they are told to."""

from pathlib import Path

import pytest

from tests import memory
from tests.memory import in_memory


@pytest.fixture(autouse=True)
def _roomy(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(memory, "ROOM_BYTES", 1)


def test_a_folder_in_memory_with_room_is_taken(tmp_path: Path) -> None:
    assert in_memory({}, tmp_path) == str(tmp_path)


def test_a_folder_that_is_named_is_kept(tmp_path: Path) -> None:
    assert in_memory({"TMPDIR": "/elsewhere"}, tmp_path) is None


def test_a_machine_without_such_a_folder_takes_its_own(tmp_path: Path) -> None:
    assert in_memory({}, tmp_path / "none") is None


def test_a_folder_without_room_is_not_taken(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(memory, "ROOM_BYTES", 10**18)
    assert in_memory({}, tmp_path) is None
