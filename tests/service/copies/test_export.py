"""A book is written as lines, or nothing is written and why is told."""

from pathlib import Path

import pytest

from ledger.errors import StorageError
from ledger.service.copies.export import export
from tests.keeper import Keeper, silent


def test_a_missing_folder_is_said(full: Keeper, tmp_path: Path) -> None:
    with pytest.raises(StorageError) as raised:
        export(full.book, tmp_path / "none" / "book.jsonl", silent)
    assert raised.value.problems == (
        (
            f"The file {tmp_path / 'none' / 'book.jsonl'} could not be written: No such file or "
            "directory.",
            "Choose a folder that exists, has room, and that you may write in.",
        ),
    )
