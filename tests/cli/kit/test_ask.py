"""Questions at a terminal: asked again until the answer can be, and ended with Ctrl-D."""

import io

import pytest

from cli.kit import ask as module
from cli.kit.ask import ask
from ledger.errors import InputError, RefusedError
from tests.kept.said import check_constants


def answered(monkeypatch: pytest.MonkeyPatch, text: str) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO(text))


def check(text: str) -> None:
    if not text.isdecimal():
        raise InputError(f"{text} is no number.", "Write one.")


def test_enter_takes_what_is_usual(monkeypatch: pytest.MonkeyPatch) -> None:
    answered(monkeypatch, "\n")
    assert ask("How many", "3", check=check) == "3"


def test_an_answer_that_cannot_be_is_asked_for_again(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    answered(monkeypatch, "many\n\n 4 \n")
    assert ask("How many", check=check, is_needed=True) == "4"
    told = capsys.readouterr()
    assert told.err == "many is no number.\n  Write one.\n"
    assert "This one is needed; Ctrl-D ends the questions." in told.out


def test_the_end_of_the_answers_ends_the_asking(monkeypatch: pytest.MonkeyPatch) -> None:
    answered(monkeypatch, "")
    with pytest.raises(RefusedError, match="The questions were broken off, so nothing was"):
        ask("How many")


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
