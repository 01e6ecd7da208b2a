"""What another book left beside the place of a new one is told and left alone."""

from pathlib import Path

import pytest

from ledger.errors import StorageError
from ledger.store.engine.files import refuse_leftovers


@pytest.mark.parametrize("ending", ["-wal", "-journal"])
def test_a_log_that_another_book_left_is_told(ending: str, tmp_path: Path) -> None:
    place, left = tmp_path / "new.db", tmp_path / f"new.db{ending}"
    left.write_bytes(b"frames")
    with pytest.raises(StorageError) as raised:
        refuse_leftovers(place)
    assert str(raised.value) == (
        f"There is a file {left}, left by another book that was at {place}. Move it to a safe "
        "place first: it may hold that book's last entries."
    )
    assert left.read_bytes() == b"frames"


def test_a_book_that_is_there_has_its_own_log(tmp_path: Path) -> None:
    (tmp_path / "book.db").write_bytes(b"SQLite format 3\0")
    (tmp_path / "book.db-wal").write_bytes(b"frames")
    refuse_leftovers(tmp_path / "book.db")
