"""Versions of a formula: written once, withdrawn, and refused when they cannot be read."""

from pathlib import Path

import pytest

from ledger.errors import InputError, LedgerError, RefusedError, StorageError
from ledger.service.masters.formula import version, versions, withdrawn
from tests.keeper import Keeper
from tests.service.masters.formula_files import GOOD, load
from tests.service.wrong_words import check_wrong_words


def test_the_same_version_is_recorded_once(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    load(sqlite_keeper, tmp_path, GOOD)
    before = sqlite_keeper.bodies()
    assert not load(sqlite_keeper, tmp_path, f"# said otherwise\n{GOOD}")
    assert sqlite_keeper.bodies() == before


def test_a_version_with_other_content_is_refused(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    load(sqlite_keeper, tmp_path, GOOD)
    with pytest.raises(RefusedError) as raised:
        load(sqlite_keeper, tmp_path, GOOD.replace("24h", "48h"))
    assert raised.value.problems == (
        (
            "Version 1 of the formula orange-essence is in the book already.",
            "Write the change as version 2; old batches keep theirs.",
        ),
    )
    assert load(sqlite_keeper, tmp_path, GOOD.replace("version = 1", "version = 2"))
    assert [item.version for item in versions(sqlite_keeper.book, "orange-essence")] == [1, 2]


@pytest.mark.parametrize(
    ("text", "error", "what", "todo"),
    [
        (
            b"code = \n",
            InputError,
            "The file orange.toml is not in the form of TOML: Invalid value (at line 1, column 8).",
            "Mend that place and load it again.",
        ),
        (
            b"line = " + b"[" * 2000,
            InputError,
            "The file orange.toml is not in the form of TOML: a number is too long, or lists stand "
            "too deep in one another.",
            "Mend that place and load it again.",
        ),
        (
            b"version = " + b"9" * 5000,
            InputError,
            "The file orange.toml is not in the form of TOML: a number is too long, or lists stand "
            "too deep in one another.",
            "Mend that place and load it again.",
        ),
        (
            b"\xff\xfe",
            InputError,
            "The file {file} is no text in UTF-8.",
            "Save it again as UTF-8 and load it.",
        ),
        (
            None,
            StorageError,
            "The file {file} could not be read: No such file or directory.",
            "Check its name and rights.",
        ),
        (
            b"#" * 1_000_001,
            InputError,
            "The file {file} is larger than 1000000 bytes.",
            "Name the right file.",
        ),
    ],
    ids=["no TOML", "lists too deep", "a number too long", "no text", "no file", "too large"],
)
def test_a_file_that_cannot_be_read_is_told(
    text: bytes | None,
    error: type[LedgerError],
    what: str,
    todo: str,
    sqlite_keeper: Keeper,
    tmp_path: Path,
) -> None:
    file = tmp_path / "orange.toml"
    if text is not None:
        file.write_bytes(text)
    with pytest.raises(LedgerError) as raised:
        sqlite_keeper.do("formula", file=str(file))
    assert type(raised.value) is error
    assert raised.value.problems == ((what.format(file=file), todo),)


def test_a_version_is_withdrawn_and_stays_readable(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    load(sqlite_keeper, tmp_path, GOOD)
    sqlite_keeper.do(
        "withdraw", code="orange-essence", version="1", because="the yield was never reached"
    )
    assert withdrawn(sqlite_keeper.book) == {("orange-essence", 1)}
    assert version(sqlite_keeper.book, "orange-essence", 1).product == "Orange essence"
    with pytest.raises(RefusedError) as raised:
        version(sqlite_keeper.book, "orange-essence", 3)
    assert raised.value.problems == (
        (
            "The formula orange-essence version 3 is not in the book.",
            "pottle formula list shows those that are.",
        ),
    )


def test_the_newest_version_is_meant_where_none_is_named(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    load(sqlite_keeper, tmp_path, GOOD)
    load(sqlite_keeper, tmp_path, GOOD.replace("version = 1", "version = 2"))
    told = [version(sqlite_keeper.book, " Orange-ESSENCE ", asked) for asked in (None, 1, 2)]
    assert [found.version for found in told] == [2, 1, 2]
    with pytest.raises(RefusedError) as raised:
        version(sqlite_keeper.book, "rum")
    assert raised.value.what == "The formula rum is not in the book."
    with pytest.raises(RefusedError) as raised:
        sqlite_keeper.do("withdraw", code="orange-essence", version="3", because="so")
    assert raised.value.problems == (
        (
            "There is no version 3 of a formula orange-essence in the book.",
            "pottle formula list shows those that are.",
        ),
    )
    first = sqlite_keeper.do("withdraw", code="Orange-Essence", version="2", because="so")
    again = sqlite_keeper.do("withdraw", code="orange-essence", version="2", because="so")
    assert (first.is_new, again.is_new, again.seq) == (True, False, first.seq)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "formula")


def test_each_of_its_words_that_is_wrong_is_named_of_withdraw(shelf: Keeper) -> None:
    check_wrong_words(shelf, "withdraw")
