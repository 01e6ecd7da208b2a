"""Every answer of every command is the kept one: the screen, what machines read, the papers.

A wanted change is renewed with ``python -m tests.renew``, and its difference read.
"""

from collections.abc import Iterator
from pathlib import Path

import pytest
from typer.testing import CliRunner

from cli.front import COMMANDS
from cli.main import app
from tests.answers.books import SMALL, Held, held
from tests.cli.schemas import verbs
from tests.kept.golden import check_golden

OF_THE_SEASON = (
    *("house", "person", "material", "party", "formula", "limits", "due", "stock", "journal"),
    *("seal", "verify", "suspects", "compare", "lot", "trace", "cost", "serving", "recall"),
    *("record", "label", "sheet", "demo", "chart", "foretell", "trial", "list"),
)


def check(name: str, lines: Iterator[str]) -> None:
    """Compare lines with the kept ones; there are some."""
    told = list(lines)
    assert told
    check_golden(f"answers/{name}.txt", "\n".join(told) + "\n")


@pytest.mark.parametrize("command", [name for name in COMMANDS if name != "demo"])
def test_in_a_story_of_rare_things_a_command_answers_as_kept(
    command: str, story: Held, tmp_path: Path
) -> None:
    check(f"story/{command}", story.lines(tmp_path, command))


def test_of_the_story_a_book_refuses_what_is_marked_and_nothing_else(story: Held) -> None:
    assert [
        (said.words, said.answer.err)
        for said in story.said
        if bool(said.answer.exit_code) != said.is_wrong
    ] == []


@pytest.mark.parametrize("command", OF_THE_SEASON)
def test_of_the_demonstration_a_command_answers_as_kept(
    command: str, season: Held, tmp_path: Path
) -> None:
    check(f"season/{command}", season.lines(tmp_path, command))


@pytest.mark.parametrize("book", SMALL)
def test_a_small_book_answers_as_kept(book: str, tmp_path: Path) -> None:
    made, copy = tmp_path / "made", tmp_path / "copy"
    made.mkdir()
    check(book.replace(" ", "_"), held(book, made).lines(copy))


def test_every_command_helps_as_kept() -> None:
    """At eighty columns, whatever the screen of the test."""
    told = (
        line
        for verb in ((), *((name,) for name in COMMANDS), *verbs())
        for line in CliRunner()
        .invoke(app, [*verb, "--help"], prog_name="pottle", terminal_width=80)
        .stdout.splitlines()
    )
    check("help", told)
