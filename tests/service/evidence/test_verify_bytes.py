"""A byte changed in the book's file is found, or the file is refused in words."""

import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path
from random import Random

import pytest

from ledger.errors import StorageError
from ledger.store.audit import beside
from tests.keeper import copy_book
from tests.service.evidence.sqlite_pages import Span, spans
from tests.service.hostile import audited

SILENT = frozenset(
    f"header: {name}"
    for name in (
        "write version",
        "change counter",
        "free pages",
        "schema cookie",
        "schema format",
        "cache size",
        "largest root",
        "text encoding",
        "vacuum mode",
        "expansion",
        "version valid for",
        "writer's version",
    )
)
"""Fields that say nothing of the rows: of writers, caches, and pages that are free."""
SEPARATOR = "separator"
"""A number between the rows of two pages, which may be any that parts them."""
SHARE = 70
"""How many bytes of the rows are changed, one at a time, and how many of what orders them."""


@pytest.fixture(scope="module")
def named(whole: Path) -> list[Span]:
    """All that means something in the file."""
    return spans(whole.read_bytes(), roots(whole))


def roots(path: Path, where: str = "rootpage > 0") -> list[int]:
    with closing(sqlite3.connect(path)) as connection:
        found = connection.execute(f"SELECT rootpage FROM sqlite_master WHERE {where}")
        return [int(root) for (root,) in found]


def is_noticed(path: Path) -> bool:
    """Return whether the change is found or refused; anything else that is raised fails a test."""
    try:
        return bool(audited(path).faults)
    except StorageError:
        return True


def changed(data: bytes, at: int, chance: Random) -> bytes:
    """Return a file with one byte changed: one of its bits, or all of it."""
    mask = chance.choice([1 << chance.randrange(8), chance.randrange(1, 256)])
    return data[:at] + bytes([data[at] ^ mask]) + data[at + 1 :]


def tries(whole: Path, folder: Path, places: list[int], seed: int) -> list[int]:
    """Change one byte at a time and return the places at which nobody notices."""
    data, chance, silent = whole.read_bytes(), Random(seed), []
    for turn, at in enumerate(places):
        path = folder / f"{turn}.db"
        path.write_bytes(changed(data, at, chance))
        if not is_noticed(path):
            silent.append(at)
        path.unlink()
    return silent


def test_every_byte_is_named_once(named: list[Span]) -> None:
    places = [at for span in named for at in range(span.start, span.start + span.length)]
    assert len(places) == len(set(places))


@pytest.mark.parametrize("part", ["rows", "order"])
def test_a_byte_changed_in_the_tables_is_noticed(
    part: str, whole: Path, named: list[Span], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """In the rows themselves, by one reader, and in what keeps them in their places, by two."""
    monkeypatch.setattr(beside, "LONG_PAGES", 1 if part == "order" else beside.LONG_PAGES)
    of_schema = {
        at
        for span in spans(whole.read_bytes(), [])
        for at in range(span.start, span.start + span.length)
    }
    places = [
        at
        for span in named
        if not span.what.startswith("header") and span.what != SEPARATOR
        and (span.what == "payload") == (part == "rows")
        for at in range(span.start, span.start + span.length)
        if at not in of_schema
    ]  # fmt: skip
    assert tries(whole, tmp_path, Random(part).sample(places, SHARE), seed=1) == []


def test_a_byte_changed_in_the_schema_is_noticed(
    whole: Path, named: list[Span], tmp_path: Path
) -> None:
    """But for white space in a statement that becomes other white space, and the order of it all.

    The row numbers of the list of tables say no more than in which order it was written.
    """
    data, chance = whole.read_bytes(), Random(2)
    places = [
        at
        for span in spans(data, [])
        if not span.what.startswith("header") and span.what not in (SEPARATOR, "row number")
        for at in range(span.start, span.start + span.length)
    ]
    for turn, at in enumerate(chance.sample(places, SHARE // 2)):
        # Seven bits, for what SQLite says of a name in eight is no text that Python reads.
        now = data[at] ^ 1 << chance.randrange(7)
        path = tmp_path / f"{turn}.db"
        path.write_bytes(data[:at] + bytes([now]) + data[at + 1 :])
        assert is_noticed(path) or (bytes([data[at]]) + bytes([now])).isspace()


def test_a_name_in_the_schema_that_is_no_text_is_refused_in_words(
    whole: Path, tmp_path: Path
) -> None:
    path = tmp_path / "unnamed.db"
    path.write_bytes(
        whole.read_bytes().replace(
            b"CREATE TRIGGER guard_note_update", b"CREATE TRIGG\xc5R guard_note_update"
        )
    )
    with pytest.raises(StorageError) as raised:
        audited(path)
    assert raised.value.problems == (
        (
            f"The book {path} could not be opened: what the database says of it is no text.",
            "The file is damaged. Keep it as it is, and take back the last copy with: pottle "
            "restore FILE --to PATH",
        ),
    )


def test_only_fields_without_content_are_passed_over_in_the_header(
    whole: Path, named: list[Span], tmp_path: Path
) -> None:
    silent = tries(whole, tmp_path, list(range(100)), seed=3)
    fields = {
        span.what for span in named for at in silent if span.start <= at < span.start + span.length
    }
    assert fields <= SILENT


def test_room_to_spare_holds_nothing_to_be_found(
    whole: Path, named: list[Span], tmp_path: Path
) -> None:
    """Nothing in it is ever read, so what stands there is passed over."""
    data = bytearray(whole.read_bytes())
    used = {at for span in named for at in range(span.start, span.start + span.length)}
    for at in range(len(data)):
        if at not in used:
            data[at] ^= 0xFF
    path = tmp_path / "spare.db"
    path.write_bytes(data)
    assert audited(path).faults == ()


def test_a_separator_passed_over_still_parts_the_same_rows(
    whole: Path, named: list[Span], tmp_path: Path
) -> None:
    places = [
        at
        for span in named
        if span.what == SEPARATOR
        for at in range(span.start, span.start + span.length)
    ]
    assert places
    before = contents(whole)
    for turn, at in enumerate(places):
        path = tmp_path / f"{turn}.db"
        path.write_bytes(changed(whole.read_bytes(), at, Random(turn)))
        assert is_noticed(path) or contents(path) == before


def contents(path: Path) -> list[str]:
    with closing(sqlite3.connect(path)) as connection:
        return list(connection.iterdump())


@pytest.mark.parametrize(
    "cut",
    [
        pytest.param(lambda size: 0, id="nothing left"),
        pytest.param(lambda size: 50, id="half a header"),
        pytest.param(lambda size: 100, id="a header"),
        pytest.param(lambda size: 4096, id="one page"),
        pytest.param(lambda size: size // 2, id="half"),
        pytest.param(lambda size: size - 4096, id="one page short"),
        pytest.param(lambda size: size - 100, id="100 bytes short"),
    ],
)
def test_a_file_cut_short_is_noticed(
    cut: Callable[[int], int], whole: Path, tmp_path: Path
) -> None:
    data = whole.read_bytes()
    path = tmp_path / "short.db"
    path.write_bytes(data[: cut(len(data))])
    assert is_noticed(path)


@pytest.mark.parametrize("page", range(2, 60, 4))
def test_a_page_of_noughts_is_noticed(page: int, whole: Path, tmp_path: Path) -> None:
    data = bytearray(whole.read_bytes())
    data[4096 * (page - 1) : 4096 * page] = bytes(4096)
    path = tmp_path / "holed.db"
    path.write_bytes(data)
    assert is_noticed(path)


@pytest.mark.parametrize(
    "pair",
    [
        ("formula_lines", "material_key"),
        ("posting", "person_key"),
        ("look", "note"),
        ("entry", "receipt"),
        ("tree", "material_key"),
    ],
    ids=" and ".join,
)
def test_pages_of_two_tables_in_each_other_s_places_are_noticed(
    pair: tuple[str, str], whole: Path, tmp_path: Path
) -> None:
    """Then cells are of types that a table of their own never holds."""
    one, other = (roots(whole, f"type = 'table' AND name = '{name}'")[0] for name in pair)
    kept, data = whole.read_bytes(), bytearray(whole.read_bytes())
    for place, source in ((one, other), (other, one)):
        data[4096 * (place - 1) : 4096 * place] = kept[4096 * (source - 1) : 4096 * source]
    path = tmp_path / "swapped.db"
    path.write_bytes(data)
    assert is_noticed(path)


@pytest.mark.parametrize("table", ["entry", "posting", "lot", "add"])
def test_rows_of_an_older_state_put_back_are_noticed(
    table: str, template: Path, whole: Path, tmp_path: Path
) -> None:
    """A page of the same table as it was before the rows came."""
    young = copy_book(template, tmp_path / "young.db")
    where = f"type = 'table' AND name = '{table}'"
    (old_root,), (root,) = roots(young, where), roots(whole, where)
    old, data = young.read_bytes(), bytearray(whole.read_bytes())
    data[4096 * (root - 1) : 4096 * root] = old[4096 * (old_root - 1) : 4096 * old_root]
    path = tmp_path / "mixed.db"
    shutil.copyfile(whole, path)
    path.write_bytes(data)
    assert is_noticed(path)
