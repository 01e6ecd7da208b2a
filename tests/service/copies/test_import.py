"""A book is carried from one engine to the other with every entry."""

from pathlib import Path

import pytest

from ledger.errors import StorageError
from ledger.service.copies.export import export
from ledger.service.copies.import_ import import_book
from ledger.service.desk.book import open_book
from ledger.service.evidence.seal import seal
from ledger.service.evidence.verify import verify
from tests.conftest import Server
from tests.keeper import Keeper, silent


@pytest.fixture(params=["file", "server"])
def place(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """A place where no book is."""
    if request.param == "file":
        return str(tmp_path / "new.db")
    server: Server = request.getfixturevalue("server")
    return server.where(server.new_database())


def test_a_book_is_carried_to_any_place_with_its_root(
    full: Keeper, place: str, tmp_path: Path
) -> None:
    told: list[tuple[int, int]] = []
    made = export(full.book, tmp_path / "book.jsonl", silent)
    put = import_book(made.path, place, lambda done, total: told.append((done, total)), full.clock)
    with Keeper(open_book(place, full.clock), full.clock) as carried:
        assert put.seal == made.seal == seal(full.book) == seal(carried.book)
        assert verify(carried.book).faults == ()
        assert carried.bodies() == full.bodies()
        assert carried.do("note", text="Written on.").seq == made.seal.entries + 1
    assert told[-1] == (made.seal.entries, made.seal.entries)
    export(full.book, tmp_path / "again.jsonl", silent)
    assert (tmp_path / "again.jsonl").read_bytes() == made.path.read_bytes()


def test_a_place_with_a_book_takes_no_other(full: Keeper, tmp_path: Path) -> None:
    made = export(full.book, tmp_path / "book.jsonl", silent)
    before = full.bodies()
    with pytest.raises(StorageError) as raised:
        import_book(made.path, full.book.where, silent)
    assert raised.value.what.endswith("already; it was left as it is.")
    assert full.bodies() == before
