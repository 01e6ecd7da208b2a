"""Words for a job lead to commands that there are."""

import pytest
from typer.testing import CliRunner

from cli import other_words as module
from cli.front import COMMANDS
from cli.main import app
from cli.other_words import OTHER_WORDS, question_after
from tests.kept.golden import check_golden
from tests.kept.said import check_constants


def test_no_word_for_a_job_is_itself_a_command() -> None:
    assert not set(OTHER_WORDS) & set(COMMANDS)


def test_every_word_for_a_job_leads_where_it_always_did() -> None:
    told = "".join(f"{word}:{question_after(word, {})}\n" for word in OTHER_WORDS)
    check_golden("cli/other_words.txt", told)


@pytest.mark.parametrize("command", sorted(set(OTHER_WORDS.values())))
def test_the_command_asked_for_is_there_with_its_option(command: str) -> None:
    for words in command.split(" or pottle "):
        name, *rest = words.split()
        told = CliRunner().invoke(app, [name, "--help"], prog_name="pottle")
        assert told.exit_code == 0
        assert not rest or rest[0] in told.stdout.split()


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
