"""A long answer is shown a screen at a time, at a terminal and nowhere else."""

import io

import pytest

from cli.kit import pager as module
from cli.kit.pager import paged, show
from tests.cli.shell import Shell
from tests.cli.terminal import shown_on
from tests.kept.said import check_constants


class Terminal(io.StringIO):
    """A stream that is a terminal."""

    def isatty(self) -> bool:
        return True


def test_in_a_pipe_nothing_is_collected(capsys: pytest.CaptureFixture[str]) -> None:
    with paged():
        print("At once.")
        assert capsys.readouterr().out == "At once.\n"


def test_a_short_answer_is_printed_as_ever(monkeypatch: pytest.MonkeyPatch) -> None:
    out = Terminal()
    monkeypatch.setattr("sys.stdout", out)
    monkeypatch.setenv("PAGER", "false")
    with paged():
        print("Short.")
        assert out.getvalue() == ""
    assert out.getvalue() == "Short.\n"


def test_a_pager_that_is_none_keeps_no_answer_back(monkeypatch: pytest.MonkeyPatch) -> None:
    out = Terminal()
    monkeypatch.setattr("sys.stdout", out)
    monkeypatch.setenv("PAGER", "/none/at/all")
    show("line\n" * 200)
    assert out.getvalue() == "line\n" * 200


def test_what_a_pager_was_given_is_not_printed_once_more(monkeypatch: pytest.MonkeyPatch) -> None:
    out = Terminal()
    monkeypatch.setattr("sys.stdout", out)
    monkeypatch.setattr("sys.stdin", Terminal())
    monkeypatch.setenv("PAGER", "true")
    monkeypatch.setenv("TERM", "xterm")
    show("line\n" * 200)
    assert out.getvalue() == ""


def test_what_was_printed_before_an_error_is_shown(monkeypatch: pytest.MonkeyPatch) -> None:
    out = Terminal()
    monkeypatch.setattr("sys.stdout", out)

    def broken() -> None:
        with paged():
            print("Before.")
            raise ValueError("wrong")

    with pytest.raises(ValueError, match="wrong"):
        broken()
    assert out.getvalue() == "Before.\n"


def test_an_answer_longer_than_the_screen_goes_to_the_pager(shell: Shell) -> None:
    book = {"POTTLE_LEDGER": str(shell.book), "NO_COLOR": "1"}
    numbered = shown_on(80, ["journal"], **book, PAGER="grep -n .")
    assert numbered.startswith("1:")
    assert shown_on(80, ["journal", "--last", "1"], **book, PAGER="grep -n .")[:2] != "1:"


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
