"""What is kept of which tests run which lines, and what has to be noted anew."""

import json
import sqlite3
from pathlib import Path

import pytest

from tests.mutants.trying.kept import Kept
from tests.mutants.trying.mapping import Timed

SUMS, ROWS = "tests/test_sums.py", "tests/test_rows.py"
KEYS = {SUMS: "1", ROWS: "1"}
TEXTS = {"ledger/sums.py": "a", "ledger/rows.py": "b"}
BOOK = "fixture tests::book"


def notes(folder: Path, ran: dict[tuple[str, str], int], tests: dict[str, list[str]]) -> Path:
    """Write what a run noted, as Coverage does: for a context and a module its lines, as bits."""
    folder.mkdir()
    with sqlite3.connect(folder / "lines") as made:
        made.executescript(
            "CREATE TABLE file (id INTEGER, path TEXT);"
            "CREATE TABLE context (id INTEGER, context TEXT);"
            "CREATE TABLE line_bits (file_id INTEGER, context_id INTEGER, numbits BLOB);"
        )
        for number, ((context, source), bits) in enumerate(ran.items()):
            made.execute("INSERT INTO file VALUES (?, ?)", (number, f"/copy/{source}"))
            made.execute("INSERT INTO context VALUES (?, ?)", (number, context))
            made.execute("INSERT INTO line_bits VALUES (?, ?, ?)", (number, number, bytes([bits])))
    made.close()
    told = {name: {"seconds": 0.5, "uses": uses} for name, uses in tests.items()}
    wide = {"tests::book": 2.0}
    whole = {"copy": "/copy", "tests": told, "wide": wide}
    (folder / "tests.json").write_text(json.dumps(whole))
    return folder


def kept(folder: Path, keys: dict[str, str] = KEYS, texts: dict[str, str] = TEXTS) -> Kept:
    """Return the map of a folder, for test files and modules as they are now."""
    return Kept(folder / "map.db", keys, texts)


@pytest.fixture
def noted(tmp_path: Path) -> Path:
    """A folder with a map: a test of sums and the book, and one of rows."""
    a, b = f"{SUMS}::test_a", f"{ROWS}::test_b"
    ran = {
        (f"test {a}", "ledger/sums.py"): 0b110,
        (BOOK, "ledger/rows.py"): 0b10,
        (f"test {b}", "ledger/rows.py"): 0b1010,
        ("import", "ledger/sums.py"): 0b10,
        (f"test {b}", "ledger/gone.py"): 0b10,
    }
    made = kept(tmp_path)
    made.store(notes(tmp_path / "notes", ran, {a: ["tests::book"], b: []}), [SUMS, ROWS])
    made.close()
    return tmp_path


def test_what_is_kept_is_the_map_of_tests_and_lines(noted: Path) -> None:
    found = kept(noted)
    assert (found.known(), found.lacking("ledger/sums.py")) == ({SUMS, ROWS}, set())
    known = found.map()
    assert known.tests == {
        f"{SUMS}::test_a": Timed(0.5, frozenset({"tests::book"})),
        f"{ROWS}::test_b": Timed(0.5),
    }
    assert known.fixtures == {"tests::book": 2.0}
    assert known.contexts("ledger/sums.py") == {
        1: [f"test {SUMS}::test_a", "import"], 2: [f"test {SUMS}::test_a"],
    }  # fmt: skip
    assert known.contexts("ledger/rows.py") == {
        1: [BOOK, f"test {ROWS}::test_b"], 3: [f"test {ROWS}::test_b"],
    }  # fmt: skip
    found.close()


def test_a_changed_test_file_is_to_be_noted_anew_and_its_tests_are_not_known(noted: Path) -> None:
    found = kept(noted, KEYS | {SUMS: "2", "tests/test_new.py": "1"})
    assert found.lacking("ledger/rows.py") == {SUMS, "tests/test_new.py"}
    assert list(found.map().tests) == [f"{ROWS}::test_b"]
    found.close()


def test_what_ran_a_module_with_another_text_is_to_be_noted_anew(noted: Path) -> None:
    """Sums ran by its test; rows by its own and by a fixture, which the test of sums uses."""
    found = kept(noted, KEYS, dict.fromkeys(TEXTS, "c"))
    assert found.lacking("ledger/rows.py") == {SUMS, ROWS}
    assert found.map().contexts("ledger/rows.py") == {}
    found.close()


def test_of_those_to_be_noted_the_quickest_are_taken_while_there_is_time(noted: Path) -> None:
    found = kept(noted)
    assert found.quickest([SUMS, ROWS, "tests/test_new.py"], 0.6) == {ROWS, "tests/test_new.py"}
    assert found.quickest([SUMS, ROWS], float("inf")) == {SUMS, ROWS}
    found.close()


def test_what_is_noted_anew_stands_in_the_place_of_what_was_kept(noted: Path) -> None:
    found = kept(noted, KEYS | {SUMS: "2"})
    again = {(f"test {SUMS}::test_c", "ledger/rows.py"): 0b100}
    found.store(notes(noted / "again", again, {f"{SUMS}::test_c": []}), [SUMS])
    known = found.map()
    assert set(known.tests) == {f"{SUMS}::test_c", f"{ROWS}::test_b"}
    assert known.contexts("ledger/sums.py") == {1: ["import"]}
    assert known.contexts("ledger/rows.py")[2] == [f"test {SUMS}::test_c"]
    assert found.lacking("ledger/rows.py") == set()
    found.close()
