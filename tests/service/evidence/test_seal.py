"""A seal from elsewhere is held against the book, on both engines."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from ledger.domain.evidence.seals import Seal
from ledger.errors import StorageError
from ledger.service.desk.book import How
from ledger.service.evidence.seal import seal, seal_faults
from ledger.service.evidence.verify import verify
from ledger.service.masters.house import house
from ledger.store.read import past
from tests.domain.evidence.rfc6962 import leaf, pair, split
from tests.keeper import Keeper
from tests.service.hostile import run


def told(keeper: Keeper, older: Seal, *, only_since: bool = False) -> list[str]:
    found = verify(keeper.book, older=older, only_since=only_since)
    return [fault.what for fault in found.faults]


def judged(keeper: Keeper, older: Seal) -> list[str]:
    """Return what is said of a seal alone; verifying says it too."""
    with keeper.reading() as connection:
        return [*seal_faults(connection, older)]


def test_every_older_seal_is_the_beginning_of_the_book(full: Keeper) -> None:
    older = []
    for number in range(12):
        older.append(seal(full.book))
        full.do("note", text=f"Note {number}.")
    assert [judged(full, one) for one in older] == [[]] * len(older)
    for one in (older[0], older[-1]):
        assert told(full, one) == told(full, one, only_since=True) == []


def test_the_seal_is_the_root_of_the_texts(full: Keeper) -> None:
    """By the definition of RFC 6962, section 2.1, and not by the book's own tree."""
    with full.reading() as connection:
        leaves = [leaf(body.encode()) for _, body in past.texts(connection)]
    assert seal(full.book).root == _mth(leaves).hex()


def _mth(leaves: list[bytes]) -> bytes:
    if len(leaves) == 1:
        return leaves[0]
    k = split(len(leaves))
    return pair(_mth(leaves[:k]), _mth(leaves[k:]))


def test_each_way_in_which_a_seal_does_not_fit_is_told(full: Keeper) -> None:
    own = seal(full.book)
    size = own.entries
    cases = {
        replace(own, root="ab" * 32): (
            f"The first {size} entries of this book do not have the root of the seal: at least "
            "one of them is not as it was when the seal was made."
        ),
        replace(own, entries=size - 1): (
            f"The first {size - 1} entries of this book do not have the root of the seal: at "
            "least one of them is not as it was when the seal was made."
        ),
        replace(own, entries=size + 1): (
            f"The seal is of {size + 1} entries and the book has {size}: this is an older copy, "
            f"and entry {size + 1} is not in it."
        ),
        replace(own, entries=size + 9): (
            f"The seal is of {size + 9} entries and the book has {size}: this is an older copy, "
            f"and entries {size + 1} to {size + 9} are not in it."
        ),
        replace(own, house="Wren", root="ab" * 32): (
            f"The seal is of the house Wren, and this is the book of {own.house}."
        ),
        replace(own, house="Wren"): (
            "The seal's entries and root are those of this book, but it names the house Wren, "
            f"and the house was {own.house}."
        ),
    }
    assert {older: judged(full, older) for older in cases} == {
        older: [what] for older, what in cases.items()
    }
    older, what = next(iter(cases.items()))
    assert told(full, older) == told(full, older, only_since=True) == [what]


def test_a_house_may_take_another_name_after_the_seal(full: Keeper) -> None:
    before = seal(full.book)
    house(full.book, How("AB"), name="Wren & Co")
    after = seal(full.book)
    assert after.house == "Wren & Co"
    assert told(full, before) == told(full, after) == []


def test_only_what_came_after_the_seal_is_read_again(sqlite_walked: Keeper) -> None:
    older = seal(sqlite_walked.book)
    for number in range(5):
        sqlite_walked.do("note", text=f"Note {number}.")
    sqlite_walked.opens("receive", material="spirit", amount="1L")
    sqlite_walked.book.close()
    told_done: list[tuple[int, int]] = []
    found = verify(
        sqlite_walked.book, lambda done, total: told_done.append((done, total)), older,
        only_since=True,
    )  # fmt: skip
    assert (found.faults, found.after) == ((), older.entries)
    assert told_done == [(6, 6)]
    where = Path(sqlite_walked.book.where)
    run(where, "UPDATE note SET text = 'Other.' WHERE seq = (SELECT MIN(seq) FROM note)")
    assert told(sqlite_walked, older, only_since=True) == []
    assert told(sqlite_walked, older) != []
    run(where, f"UPDATE note SET text = 'Other.' WHERE seq = {older.entries + 2}")
    assert told(sqlite_walked, older, only_since=True) == [
        f"Entry {older.entries + 2} says otherwise than the table note in: text."
    ]


def test_a_lost_node_on_the_way_is_told(sqlite_walked: Keeper) -> None:
    older = seal(sqlite_walked.book)
    sqlite_walked.do("note", text="More.")
    run(Path(sqlite_walked.book.where), "DELETE FROM tree WHERE height = 6")
    assert told(sqlite_walked, older)[0] == "The book has lost its hash over entries 1 to 64."
    with pytest.raises(StorageError) as raised:
        seal(sqlite_walked.book)
    assert raised.value.problems == (
        (
            "The book has lost its hash over entries 1 to 64.",
            "Keep this book as it is. Run pottle verify to see what else does not fit.",
        ),
    )


def test_a_book_that_lost_its_house_is_sealed_without_a_name(sqlite_keeper: Keeper) -> None:
    """Damage keeps nobody from sealing what is left of the book."""
    before = seal(sqlite_keeper.book)
    run(Path(sqlite_keeper.book.where), "DELETE FROM house")
    assert seal(sqlite_keeper.book) == replace(before, house="")
