"""Files that are handed in: read up to a size, and refused in words."""

from pathlib import Path

import pytest

from ledger.errors import InputError, LedgerError, StorageError
from ledger.text_files import text_of


def problem(error: type[LedgerError], path: Path, most_bytes: int = 10) -> tuple[str, str]:
    with pytest.raises(error) as raised:
        text_of(path, most_bytes, "Save it again.")
    (told,) = raised.value.problems
    return told


def test_a_file_of_just_that_size_is_read(tmp_path: Path) -> None:
    path = tmp_path / "a.txt"
    path.write_text("é" * 5, encoding="utf-8")
    assert text_of(path, 10) == "é" * 5
    assert problem(InputError, path, 9) == (
        f"The file {path} is larger than 9 bytes.",
        "Name the right file.",
    )


def test_a_file_without_end_is_not_read_to_its_end() -> None:
    assert (
        problem(InputError, Path("/dev/zero"))[0] == "The file /dev/zero is larger than 10 bytes."
    )


def test_what_is_no_text_or_no_file_is_told(tmp_path: Path) -> None:
    path = tmp_path / "a.txt"
    path.write_bytes(b"\xff")
    assert problem(InputError, path) == (f"The file {path} is no text in UTF-8.", "Save it again.")
    assert problem(StorageError, tmp_path) == (
        f"The file {tmp_path} could not be read: Is a directory.",
        "Check its name and rights.",
    )
