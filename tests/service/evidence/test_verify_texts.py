"""Verifying tells where a text stands that no entry has, whatever it holds."""

import json
from pathlib import Path

import pytest

from tests.service.hostile import (
    audited,
    first_named,
    found_in,
    number,
    row_of_kind,
    rows_of,
    run,
    text_put,
    write_text,
)

PARTS = ("facts", "kind", "lot", "happened_at", "offset_min", "seq", "origin", "by", "stands_for")
WRONG: tuple[object, ...] = (None, 5, 2**53 - 1, "x", [], [[]], {}, {"code": []}, [5], 1.5, True)


@pytest.mark.parametrize("hashed", [False, True], ids=["with its old hash", "with its hash"])
@pytest.mark.parametrize(
    "body",
    [
        pytest.param(b"caf\xe9", id="no UTF-8"),
        pytest.param(b"", id="nothing"),
        pytest.param(b"\0", id="a nought"),
        pytest.param(b"{", id="no JSON"),
        pytest.param(b"null", id="null"),
        pytest.param(b"[" * 100_000, id="nested too deeply"),
        pytest.param(b"9" * 10_000, id="a number too long"),
        pytest.param(b'{"seq":20}', id="too little"),
    ],
)
def test_a_text_that_no_entry_has_is_told(body: bytes, hashed: bool, path: Path) -> None:
    write_text(path, 20, body, hashed=hashed)
    audit = audited(path)
    assert "The text of entry 20 is not what the book writes." in [f.what for f in audit.faults]
    assert first_named(audit.faults) == 20


def test_a_text_that_does_not_fit_its_hash_is_told(path: Path) -> None:
    run(path, "UPDATE entry SET body = replace(body, '2026', '2025') WHERE seq = 20", table="entry")
    assert found_in(path)[0] == "The text of entry 20 does not fit its hash."


@pytest.mark.parametrize("wrong", WRONG, ids=repr)
@pytest.mark.parametrize("turn", range(3))
def test_a_text_with_a_part_of_a_wrong_type_is_told(turn: int, wrong: object, path: Path) -> None:
    """Even when it has its hash; every third entry gets a wrong part, another each time."""
    changed = {}
    for row in rows_of(path, "entry")[2 + turn :: 3]:
        seq, plain = number(row["seq"]), json.loads(str(row["body"]))
        part = PARTS[(seq // 3 + turn) % len(PARTS)]
        if plain.get(part) != wrong or type(plain.get(part)) is not type(wrong):
            changed[seq] = json.dumps(
                plain | {part: wrong}, sort_keys=True, separators=(",", ":"), ensure_ascii=False
            )
    statements = [text_put(seq, text.encode(), hashed=True) for seq, text in changed.items()]
    run(path, *statements, table="entry")
    assert changed.keys() <= {fault.seq for fault in audited(path).faults}


@pytest.mark.parametrize(
    ("was", "now"),
    [
        pytest.param('"v":1', '"v":2', id="another version"),
        pytest.param('"v":1', '"v":1,"w":1', id="a name too many"),
        pytest.param('"kind"', ' "kind"', id="white space"),
        pytest.param('"facts"', '"level":null,"facts"', id="null"),
        pytest.param('Z",', '+00:00",', id="a time in another form"),
    ],
)
def test_a_text_in_any_other_form_is_told_even_with_its_hash(
    was: str, now: str, path: Path
) -> None:
    last = rows_of(path, "entry")[-1]
    seq, body = number(last["seq"]), str(last["body"])
    assert was in body
    write_text(path, seq, body.replace(was, now, 1).encode(), hashed=True)
    assert f"The text of entry {seq} is not what the book writes." in found_in(path)


def test_a_cell_that_is_no_utf_8_is_told_where_it_stands(path: Path) -> None:
    run(path, "UPDATE complaint SET symptom = CAST(x'e9' AS TEXT)", table="complaint")
    seq = number(row_of_kind(path, "complaint")["seq"])
    assert found_in(path) == [f"Entry {seq} says otherwise than the table complaint in: symptom."]


def test_an_entry_about_a_lot_that_was_never_opened_is_told(path: Path) -> None:
    row = row_of_kind(path, "look")
    seq = number(row["seq"])
    code = next(str(lot["code"]) for lot in rows_of(path, "lot") if lot["id"] == row["lot"])
    body = str(row["body"]).replace(f'"lot":"{code}"', '"lot":"NONE-1"')
    write_text(path, seq, body.encode())
    assert found_in(path) == [
        f"Entry {seq} speaks of the lot NONE-1, which no entry before it opened."
    ]


def test_an_unreadable_receipt_does_not_make_the_entries_of_its_lot_unreadable(path: Path) -> None:
    seq = row_of_kind(path, "receipt")["seq"]
    write_text(path, number(seq), b"{}", hashed=True)
    assert {fault.seq for fault in audited(path).faults} == {seq}
