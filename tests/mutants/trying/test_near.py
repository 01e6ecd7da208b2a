"""Test files: which there are, which are nearest to a module, when one is another."""

from pathlib import Path

from tests.mutants.trying.near import files_of_tests, keys, nearest

FILES = {
    "ledger/sums.py": '"""Sums.\n\n>>> 1\n1\n"""\n',
    "ledger/rows.py": '"""Rows."""\n',
    "tests/conftest.py": "",
    "tests/keeper.py": "A = 1\n",
    "tests/test_sums.py": "from tests.keeper import A\n",
    "tests/test_rows.py": "from ledger.rows import B\n",
    "tests/mutants/test_a.py": "",
}


def test_test_modules_and_modules_with_examples_hold_tests() -> None:
    assert files_of_tests(FILES) == ["ledger/sums.py", "tests/test_rows.py", "tests/test_sums.py"]


def test_the_mirror_the_examples_and_the_test_that_holds_a_module_are_nearest() -> None:
    told = ["ledger/sums.py", "tests/test_sums.py", "tests/test_sums_by_hand.py", "tests/test_a.py"]
    assert nearest("ledger/sums.py", told) == set(told[:3])
    held = "tests/service/lots/test_stock.py"
    assert nearest("ledger/service/account/lots.py", [*told, held]) == {held}


def test_what_asks_every_module_of_a_folder_is_near_to_each_but_not_to_migrations() -> None:
    readers = "tests/store/read/test_readers.py"
    told = ["tests/test_named.py", "tests/test_house.py", readers]
    assert nearest("ledger/store/read/lots.py", told) == {"tests/test_named.py", readers}
    assert nearest("ledger/domain/rules/figures.py", told) == {"tests/test_named.py"}
    assert nearest("ledger/store/migrations/kinds.py", told) == set()
    assert nearest("reports/kit/figures.py", told) == set()


def test_a_test_file_is_another_when_what_it_imports_of_the_tests_is(tmp_path: Path) -> None:
    for name, text in FILES.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(text)
    sums, rows = "tests/test_sums.py", "tests/test_rows.py"
    before = keys([sums, rows], tmp_path)
    (tmp_path / "ledger/rows.py").write_text("B = 2\n")
    assert keys([sums, rows], tmp_path) == before
    (tmp_path / "tests/keeper.py").write_text("A = 2\n")
    after = keys([sums, rows], tmp_path)
    assert (after[sums] != before[sums], after[rows] == before[rows]) == (True, True)
    (tmp_path / "tests/conftest.py").write_text("C = 3\n")
    assert keys([rows], tmp_path)[rows] != before[rows]
