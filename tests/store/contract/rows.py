"""What is stored: rows that say what the entries say, texts that are hashed, one root."""

import json
from hashlib import sha256
from types import NoneType
from typing import Any, get_args, get_origin, get_type_hints

from sqlalchemy import Connection, Inspector, Table, inspect, select

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries import FACTS, Entry, Party, Person
from ledger.domain.entries.plain import entry_text, read_entry
from ledger.store.engine.connections import connected
from ledger.store.form.columns import columns_of
from ledger.store.form.mapping import rows
from ledger.store.form.tables import (
    CHILDREN,
    DETAILS,
    ENTRY,
    LEVEL,
    LOT,
    MATERIAL_KEY,
    METADATA,
    PERSON_KEY,
    POSTING,
    TREE,
    TYPED,
)
from ledger.store.write import recorder
from tests.keeper import Keeper, row_counts


def naive_root(leaves: list[bytes]) -> bytes:
    """Compute MTH as RFC 6962, section 2.1, words it."""
    if len(leaves) < 2:
        return leaves[0] if leaves else sha256(b"").digest()
    k = 1
    while k * 2 < len(leaves):
        k *= 2
    return sha256(b"\x01" + naive_root(leaves[:k]) + naive_root(leaves[k:])).digest()


def stored_rows(connection: Connection, table: Table, seq: int) -> list[dict[str, Any]]:
    column = table.c.id if table is LOT else table.c.seq
    query = select(table).where(column == seq).order_by(*table.primary_key.columns)
    return [dict(row) for row in connection.execute(query).mappings()]


def expected_rows(connection: Connection, entry: Entry, body: str) -> dict[str, list[Any]]:
    """Return what `rows` says that an entry has in each table."""
    ids = {row.code: row.id for row in connection.execute(select(LOT))}
    first = {
        ("person", key): seq
        for key, seq in connection.execute(select(PERSON_KEY.c.initials, PERSON_KEY.c.seq))
    } | {
        ("material", key): seq
        for key, seq in connection.execute(select(MATERIAL_KEY.c.code, MATERIAL_KEY.c.seq))
    }
    leaf = sha256(b"\x00" + body.encode()).digest()
    found: dict[str, list[Any]] = {}
    for table, cells in rows(entry, body, leaf, ids, lambda *key: first[key] == entry.seq):
        row = dict(zip(columns_of(table), cells, strict=True))
        found.setdefault(table, []).append(row)
    return found


class RowsContract:
    """Its tests need the fixture `walked`: a book with a row in every table."""

    def test_no_table_of_the_walked_book_is_empty(self, walked: Keeper) -> None:
        """What is said of every row below is said of every table."""
        assert [name for name, count in row_counts(walked.book).items() if not count] == []

    def test_every_row_is_what_its_entry_says_and_no_other(self, walked: Keeper) -> None:
        told = 0
        with walked.reading() as connection:
            for seq, body in walked.bodies():
                expected = expected_rows(connection, read_entry(body), body)
                stored = {
                    name: found
                    for name, table in METADATA.tables.items()
                    if table not in (TREE, DETAILS)
                    and (found := stored_rows(connection, table, seq))
                }
                assert stored == expected
                told += sum(map(len, expected.values()))
        counts = row_counts(walked.book)
        assert told == sum(counts.values()) - counts["tree"] - counts["details"]

    def test_every_row_says_what_the_hashed_text_says(self, walked: Keeper) -> None:
        """Told from the text alone, without the mapping that wrote the rows."""
        with walked.reading() as connection:
            codes = {row.id: row.code for row in connection.execute(select(LOT))}
            for seq, body in walked.bodies():
                plain = json.loads(body)
                facts = plain["facts"]
                (spine,) = _without_nulls(stored_rows(connection, ENTRY, seq))
                assert spine.pop("body") == body
                assert spine.pop("leaf") == sha256(b"\x00" + body.encode()).digest()
                lot = spine.pop("lot", None)
                assert (codes.get(lot), spine) == (plain.get("lot"), _spine_cells(plain))
                (typed,) = _without_nulls(stored_rows(connection, TYPED[plain["kind"]], seq))
                assert typed == {"seq": seq, "entry_kind": plain["kind"], **_cells(facts)}
                for (kind, name), table in CHILDREN.items():
                    wanted = facts.get(name, []) if kind == plain["kind"] else []
                    lines = [
                        {"seq": seq, "line": line, **_cells(child)}
                        for line, child in enumerate(wanted, start=1)
                    ]
                    assert _without_nulls(stored_rows(connection, table, seq)) == lines
                postings = [
                    {name: codes[value] if name in ("source", "target") else value
                     for name, value in row.items() if name not in ("seq", "line")}
                    for row in _without_nulls(stored_rows(connection, POSTING, seq))
                ]  # fmt: skip
                assert postings == plain.get("postings", [])
                levels = stored_rows(connection, LEVEL, seq)
                told = [{"lot": codes[row["lot"]], "amount": row["amount"]} for row in levels]
                assert told == ([plain["level"]] if "level" in plain else [])

    def test_the_text_of_every_entry_read_and_written_again_is_the_same(
        self, walked: Keeper
    ) -> None:
        bodies = walked.bodies()
        assert [(seq, entry_text(read_entry(body))) for seq, body in bodies] == bodies

    def test_the_root_is_that_of_all_the_texts(self, walked: Keeper) -> None:
        leaves = [sha256(b"\x00" + body.encode()).digest() for _, body in walked.bodies()]
        with walked.reading() as connection:
            stored = connection.execute(select(ENTRY.c.leaf).order_by(ENTRY.c.seq)).scalars()
            assert [bytes(leaf) for leaf in stored] == leaves
            assert recorder.root(connection) == naive_root(leaves)

    def test_the_tree_keeps_each_complete_node_once(self, walked: Keeper) -> None:
        leaves = [sha256(b"\x00" + body.encode()).digest() for _, body in walked.bodies()]
        expected = {
            (height, place): naive_root(leaves[place << height : place + 1 << height])
            for height in range(1, len(leaves).bit_length())
            for place in range(len(leaves) >> height)
        }
        with walked.reading() as connection:
            found = connection.execute(select(TREE.c.height, TREE.c.place, TREE.c.hash))
            assert {(height, place): bytes(value) for height, place, value in found} == expected

    def test_the_columns_of_every_kind_are_its_fields(self, walked: Keeper) -> None:
        with connected(walked.book.where) as engine:
            looking = inspect(engine)
            tables = looking.get_table_names()
            spine = {"seq": False, "entry_kind": False}
            for kind, facts in FACTS.items():
                plain, many = _columns_wanted(facts)
                assert _columns(looking, kind) == spine | plain
                children = {name for name in tables if name.startswith(f"{kind}_")}
                assert children - {f"{kind}_key"} == {f"{kind}_{name}" for name in many}
                for name, child in many.items():
                    row = {"seq": False, "line": False} | _columns_wanted(child)[0]
                    assert _columns(looking, f"{kind}_{name}") == row


def _without_nulls(found: list[dict[str, Any]]) -> list[dict[str, Any]]:
    return [{name: value for name, value in row.items() if value is not None} for row in found]


def _spine_cells(plain: dict[str, Any]) -> dict[str, Any]:
    elsewhere = ("v", "lot", "facts", "opens", "postings", "level")
    return {name: value for name, value in plain.items() if name not in elsewhere}


def _cells(facts: dict[str, Any]) -> dict[str, Any]:
    cells: dict[str, Any] = {}
    for name, value in facts.items():
        if isinstance(value, dict):
            cells |= {
                name: value["amount"],
                f"{name}_measure": value["measure"],
                f"{name}_written": value["written"],
            }
        elif not isinstance(value, list):
            cells[name] = value
    return cells


def _columns(looking: Inspector, table: str) -> dict[str, bool]:
    return {column["name"]: column["nullable"] for column in looking.get_columns(table)}


def _columns_wanted(facts: type) -> tuple[dict[str, bool], dict[str, type]]:
    """Return columns with whether they may be null, and classes of child rows, from the fields."""
    plain: dict[str, bool] = {}
    many: dict[str, type] = {}
    for name, hint in get_type_hints(facts).items():
        shapes = get_args(hint)
        is_beside = facts in (Party, Person) and name == "name"
        if name == "KIND":
            continue
        if get_origin(hint) is tuple:
            many[name] = shapes[0]
            continue
        endings = ("", "_measure", "_written") if Quantity in (hint, *shapes) else ("",)
        plain |= {name + ending: NoneType in shapes or is_beside for ending in endings}
    return plain, many
