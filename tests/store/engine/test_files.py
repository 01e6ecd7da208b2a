"""A new file has its name only once it is whole, and never another's."""

from pathlib import Path

import pytest

from ledger.store.engine.files import new_file


def fill(path: Path, words: str) -> None:
    with new_file(path) as part:
        part.write_text(words)


def fill_and_break_off(path: Path) -> None:
    with new_file(path) as part:
        part.write_text("half")
        raise KeyboardInterrupt


def fill_while_another_does(path: Path) -> None:
    with new_file(path) as part:
        part.write_text("other")
        path.write_text("mine")


def test_a_new_file_is_private_and_leaves_nothing_beside_it(tmp_path: Path) -> None:
    fill(tmp_path / "new", "whole")
    assert [path.name for path in tmp_path.iterdir()] == ["new"]
    assert (tmp_path / "new").read_text() == "whole"
    assert (tmp_path / "new").stat().st_mode & 0o777 == 0o600


def test_a_file_that_is_broken_off_leaves_nothing(tmp_path: Path) -> None:
    with pytest.raises(KeyboardInterrupt):
        fill_and_break_off(tmp_path / "new")
    assert list(tmp_path.iterdir()) == []


def test_a_file_that_is_there_is_left(tmp_path: Path) -> None:
    (tmp_path / "new").write_text("mine")
    with pytest.raises(FileExistsError):
        fill(tmp_path / "new", "other")
    assert (tmp_path / "new").read_text() == "mine"


def test_a_file_that_appears_meanwhile_is_left(tmp_path: Path) -> None:
    with pytest.raises(FileExistsError):
        fill_while_another_does(tmp_path / "new")
    assert [path.name for path in tmp_path.iterdir()] == ["new"]
    assert (tmp_path / "new").read_text() == "mine"


def test_a_link_that_leads_nowhere_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / "new").symlink_to(tmp_path / "elsewhere")
    with pytest.raises(FileExistsError):
        fill(tmp_path / "new", "other")
    assert not (tmp_path / "elsewhere").exists()
