"""Mutants of a small project are tried in a copy: some are noticed, some are not."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.mutants.cases import mutants
from tests.mutants.making.tree import copy_to
from tests.mutants.trying.mapping import Map, Timed
from tests.mutants.trying.running import LATE, Told, Worker, portions, read

SOURCE = """\
def is_enough(left, wanted):
    return left >= wanted
"""
TESTS = """\
from ledger.sums import is_enough


def test_less_is_not_enough():
    assert not is_enough(1, 2)


def test_more_is_enough():
    assert is_enough(2, 1)


def test_that_fails_anyhow():
    assert is_enough(1, 2)
"""
NAMES = [
    f"tests/test_sums.py::test_{name}"
    for name in ("less_is_not_enough", "more_is_enough", "that_fails_anyhow")
]
FILES = {
    "ledger/__init__.py": "",
    "ledger/sums.py": SOURCE,
    "tests/test_sums.py": TESTS,
    "pyproject.toml": "[tool.pytest.ini_options]\n",
}


@pytest.fixture(scope="module")
def tries(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Worker]:
    """One that tries mutants in a copy of a small project."""
    made = worker(tmp_path_factory.mktemp("tries"))
    yield made
    made.close()


def worker(folder: Path) -> Worker:
    project = folder / "project"
    for name, text in FILES.items():
        (project / name).parent.mkdir(parents=True, exist_ok=True)
        (project / name).write_text(text)
    known = Map({name: Timed(0.01) for name in NAMES}, lambda _: {})
    return Worker(copy_to(folder / "copy", FILES, project), folder, known, set(), ["pytest"])


def test_a_mutant_is_killed_survives_or_shows_that_its_test_is_broken(tries: Worker) -> None:
    made = mutants("ledger/sums.py", SOURCE)
    boundary, nothing = made[">= -> >"], made["left >= wanted -> None"]
    less, more, anyhow = NAMES
    assert tries.tried(boundary, [less, more]) == ("survived", "")
    assert tries.tried(nothing, [less, more]) == ("killed", more)
    assert tries.tried(nothing, [less, anyhow]) == ("broken", anyhow)
    assert tries.tried(nothing, [anyhow, less, more]) == ("killed", more)
    assert tries.tried(nothing, []) == ("unrun", "")
    assert tries.trusted == {more}
    assert (tries.copy / "ledger/sums.py").read_text() == SOURCE


def test_tests_without_an_end_are_ended_and_the_next_run_goes_on(
    tries: Worker, monkeypatch: pytest.MonkeyPatch
) -> None:
    endless = tries.copy / "tests/test_endless.py"
    endless.write_text("def test_endless():\n    while True:\n        pass\n")
    name = "tests/test_endless.py::test_endless"
    known = Map({**tries.known.tests, name: Timed(0.0)}, lambda _: {})
    monkeypatch.setattr(tries, "known", known)
    with monkeypatch.context() as patch:
        patch.setattr("tests.mutants.trying.running.START_SECONDS", 0.5)
        assert tries.run([name]) == Told(False, (), LATE)
    assert tries.run(NAMES[:2]) == Told(True, tuple(NAMES[:2]))


def test_few_and_quick_tests_come_first() -> None:
    tests = {f"tests/test_{n}.py::test_a": Timed(n / 10) for n in range(40)}
    known = Map(tests, lambda _: {})
    parts = list(portions(list(tests), known))
    assert [len(part) for part in parts] == [6, 19, 15]
    assert [name for part in parts for name in part] == list(tests)


def test_a_test_that_is_long_by_itself_is_a_portion_of_its_own() -> None:
    known = Map({"a": Timed(100), "b": Timed(100)}, lambda _: {})
    assert list(portions(["a", "b"], known)) == [["a"], ["b"]]


def test_what_a_run_told_is_read() -> None:
    told = "ran tests/a.py::test_a[x y]\nfailed tests/a.py::test_b\n"
    assert read(told, 1) == Told(False, ("tests/a.py::test_a[x y]",), "tests/a.py::test_b")
    assert read("", 0) == Told(True)
    assert read("", 4) == Told(False, (), "it did not start")
    assert read("ran tests/a.py::test_a\n", None).failed == "its time was over"


def test_that_no_test_is_left_to_run_is_no_kill() -> None:
    assert read("", 5) == Told(True)
