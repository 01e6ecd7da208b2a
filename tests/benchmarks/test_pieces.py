"""Every benchmark can be loaded, and what it measures runs in the least book."""

import sys
from importlib import import_module
from itertools import count
from pathlib import Path

import pytest

from ledger.service.desk.book import open_book
from tests.benchmarks import bench_append, bench_bulk, bench_session, bench_startup, bench_verify
from tests.benchmarks.__main__ import RUNS
from tests.benchmarks.bench_contents import packed_lots, reckon_all, trace_all
from tests.benchmarks.bench_trace import bare, lots_to_trace, told, walked
from tests.benchmarks.bench_workbook import append_row, workbook_in
from tests.benchmarks.books import book_of


@pytest.fixture(scope="module")
def small(tmp_path_factory: pytest.TempPathFactory) -> str:
    """A small book, to which some tests add."""
    where = str(tmp_path_factory.mktemp("small") / "book.db")
    book_of(60, where).close()
    return where


@pytest.mark.parametrize("name", sorted({name for name, *_ in RUNS}))
def test_a_benchmark_can_be_loaded_and_measures_by_itself(name: str) -> None:
    assert callable(import_module(f"tests.benchmarks.{name}").main)


def test_additions_are_measured_by_the_verb_and_by_each_of_its_floors() -> None:
    taken = bench_append.measured(2, 1)
    assert len(taken) == len(bench_append.WORKS)
    assert all(spent > 0 for both in taken for spent in both)


def test_an_import_and_a_plain_insertion_make_the_same_entries() -> None:
    assert all(rate > 0 for rate in bench_bulk.rates(10, 1))


def test_acts_of_all_sorts_are_done_in_a_session(
    small: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path))
    with bench_session.later(open_book(small)) as book:
        taken = bench_session.milliseconds(book, 5)
    assert {what: len(spent) for what, spent in taken.items()} == dict.fromkeys(
        ("spirit", "note", "hazy", "oil", "ph"), 1
    )


def test_the_least_command_reads_a_row(
    small: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys, "argv", ["least"])
    with pytest.raises(SystemExit):
        exec(bench_startup.BARE_READ.format(where=small), {})
    assert capsys.readouterr().out.startswith("(1, ")


def test_books_are_walked_reckoned_and_verified(small: str) -> None:
    with open_book(small) as book:
        with book.reading() as connection:
            for way, starts in lots_to_trace(connection).values():
                for walk in (bare, walked, told):
                    walk(connection, way, starts[:2])
            codes = packed_lots(connection)[:2]
            trace_all(connection, codes)
            reckon_all(connection, codes)
        bench_verify.hash_rows(book.where)
        bench_verify.read_and_hash(book.where)
        assert bench_verify.busier_thread_s(book) > 0


def test_a_row_goes_into_a_workbook(tmp_path: Path) -> None:
    append_row(workbook_in(str(tmp_path), 3), count(4))
