"""Files that commands write: one that is there stays unless asked."""

from pathlib import Path

import pytest

from cli.kit.files import OTHER_NAME, check_place, write
from ledger.errors import StorageError


def problems_of(out: Path, *, force: bool = False) -> tuple[tuple[str, str], ...]:
    with pytest.raises(StorageError) as raised:
        check_place(out, force=force)
    return raised.value.problems


def test_a_file_that_is_there_stays_unless_asked(tmp_path: Path) -> None:
    there = tmp_path / "there.pdf"
    there.touch()
    assert problems_of(there) == (
        (f"There is a file {there} already; it was left as it is.", OTHER_NAME),
    )
    check_place(there, force=True)
    check_place(tmp_path / "new.pdf", force=False)


def test_a_link_that_leads_nowhere_is_a_file_too(tmp_path: Path) -> None:
    link = tmp_path / "link.pdf"
    link.symlink_to(tmp_path / "gone.pdf")
    assert problems_of(link)[0][0] == f"There is a file {link} already; it was left as it is."


def test_a_folder_that_is_not_there_and_a_name_that_is_none_are_told(tmp_path: Path) -> None:
    assert problems_of(tmp_path / "none" / "a.pdf", force=True) == (
        (f"There is no folder {tmp_path / 'none'}.", "Make it first, or give another place."),
    )
    long = tmp_path / ("x" * 300)
    assert problems_of(long) == (
        (f"No file can be named {long}: File name too long.", "Give a shorter name."),
    )


def test_what_cannot_be_written_is_told(tmp_path: Path) -> None:
    write(tmp_path / "a.pdf", b"%PDF-")
    assert (tmp_path / "a.pdf").read_bytes() == b"%PDF-"
    with pytest.raises(StorageError) as raised:
        write(tmp_path, b"%PDF-")
    assert raised.value.what == f"The file {tmp_path} could not be written: Is a directory."
