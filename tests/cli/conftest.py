"""A book that was kept by commands alone, walked once and copied for each test."""

import os
from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from tests.answers.clock import kept_time
from tests.answers.said import in_folder
from tests.cli.formulas import FILES, write_formulas
from tests.cli.path import BOTTLES, DELIVERIES, ESSENCE, SET_UP, SYRUP
from tests.cli.shell import Shell, walk
from tests.keeper import MORNING, SetClock, copy_book

NOON = MORNING + timedelta(hours=3)


@pytest.fixture(scope="session")
def walked_shell(tmp_path_factory: pytest.TempPathFactory) -> Shell:
    folder = tmp_path_factory.mktemp("shell")
    shell = Shell(folder / "pottle.db")
    before = Path.cwd()
    os.chdir(folder)
    try:
        for command, answer in walk(shell, (*SET_UP, *DELIVERIES, *ESSENCE, *SYRUP, *BOTTLES)):
            assert answer.exit_code == 0, (command, answer)
    finally:
        os.chdir(before)
    return shell


@pytest.fixture
def shell(walked_shell: Shell, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shell:
    """A book in which an essence and a syrup were made, bottled, sold and complained of."""
    monkeypatch.chdir(tmp_path)
    return replace(walked_shell, book=copy_book(walked_shell.book, tmp_path / "pottle.db"))


@pytest.fixture(scope="session")
def still_template(tmp_path_factory: pytest.TempPathFactory) -> Shell:
    """The same book, made on one morning, a minute after the other."""
    folder = tmp_path_factory.mktemp("still")
    shell, clock = Shell(folder / "pottle.db"), SetClock(MORNING)
    begin = ("", f"{SET_UP[0][1]} --time-zone Europe/Dublin")
    path = (begin, *SET_UP[1:], *DELIVERIES, *ESSENCE, *SYRUP, *BOTTLES)
    with in_folder(folder), kept_time(clock):
        for command, answer in walk(shell, path):
            assert answer.exit_code == 0, (command, answer)
            clock.forward(minutes=1)
    return shell


@pytest.fixture
def still(
    still_template: Shell, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> Iterator[Shell]:
    """That book at noon, where the clock stands still, so that all that is told stays."""
    monkeypatch.chdir(tmp_path)
    with kept_time(SetClock(NOON)):
        yield replace(still_template, book=copy_book(still_template.book, tmp_path / "pottle.db"))


@pytest.fixture
def formulas(shell: Shell) -> Shell:
    """The book with two versions of a formula; a file is there already."""
    write_formulas()
    Path("there.pdf").touch()
    for name in FILES:
        assert shell.run("formula", "load", name).exit_code == 0
    return shell


@pytest.fixture
def bare(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shell:
    """A book of which only the house is known."""
    monkeypatch.chdir(tmp_path)
    shell = Shell(tmp_path / "pottle.db")
    assert shell.run("init", "--house", "Wren & Co", "--currency", "EUR").exit_code == 0
    return shell
