"""A book that was kept by commands alone, walked once and copied for each test."""

import os
from dataclasses import replace
from pathlib import Path

import pytest

from tests.cli.formulas import FILES, write_formulas
from tests.cli.path import BOTTLES, DELIVERIES, ESSENCE, SET_UP, SYRUP
from tests.cli.shell import Shell, walk
from tests.keeper import copy_book


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
