"""The guide is listed, shown whole, and reads in a terminal; a page it has not is told."""

import os
import pty
import re
import subprocess
import sys
from pathlib import Path

import pytest

from cli.screens.guide import guide as module
from cli.screens.guide.guide import TOPICS, page
from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.said import check_constants

ROOT = Path(__file__).parents[3]


@pytest.fixture
def shell(tmp_path: Path) -> Shell:
    """A shell without a book: the guide needs none."""
    return Shell(tmp_path / "none.db")


def test_the_pages_are_listed_with_what_they_tell(shell: Shell) -> None:
    lines = shell.line("guide").lines
    assert lines[:2] == [
        "topic          what it tells",
        "first-hour     From an empty folder to ten bottles sold, with every command it takes.",
    ]
    assert [line.split()[0] for line in lines[1:-1]] == list(TOPICS)
    assert lines[-1] == "Next: pottle guide first-hour"


def test_a_page_is_shown_as_it_is_kept(shell: Shell) -> None:
    assert shell.line("guide first-hour").out == page("first-hour")


def test_a_page_that_is_not_there_is_told_with_the_nearest(shell: Shell) -> None:
    answer = shell.line("guide recal")
    assert (answer.exit_code, answer.complaints) == (
        3,
        [
            "The guide has no page recal. Near to it: recall.",
            "  pottle guide lists the pages that are.",
        ],
    )


def test_a_page_in_a_terminal_has_no_marks_of_markdown_and_fits_it() -> None:
    ours, theirs = pty.openpty()
    command = [sys.executable, "-m", "cli.program", "guide", "backups"]
    env = {**os.environ, "COLUMNS": "80", "NO_COLOR": "1", "TERM": "xterm"}
    done = subprocess.Popen(command, cwd=ROOT, env=env, stdout=theirs, stderr=theirs)
    os.close(theirs)
    told = b""
    try:
        while piece := os.read(ours, 65536):
            told += piece
    except OSError:  # the end of a terminal
        pass
    done.wait()
    # What a slow machine is told meanwhile is wiped again.
    text = re.sub(r"\r?[^\n]*\r\x1b\[K|\x1b\[[\d;]*[mK]", "", told.decode())
    lines = text.splitlines()
    assert max(map(len, lines)) <= 80
    assert not any(line.startswith(("#", "```")) for line in lines)
    assert " pottle backup stick" in text


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("guide")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("guide", still)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
