"""Words for a job lead to commands that there are."""

import pytest
from typer.testing import CliRunner

from cli.front import COMMANDS
from cli.main import app
from cli.other_words import OTHER_WORDS


def test_no_word_for_a_job_is_itself_a_command() -> None:
    assert not set(OTHER_WORDS) & set(COMMANDS)


@pytest.mark.parametrize("command", sorted(set(OTHER_WORDS.values())))
def test_the_command_asked_for_is_there_with_its_option(command: str) -> None:
    for words in command.split(" or pottle "):
        name, *rest = words.split()
        told = CliRunner().invoke(app, [name, "--help"], prog_name="pottle")
        assert told.exit_code == 0
        assert not rest or rest[0] in told.stdout.split()
