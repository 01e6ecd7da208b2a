"""The list of commands says what the commands themselves say."""

import pytest
import typer
from typer._click import Context

from cli.front import COMMANDS, Front
from cli.main import app


@pytest.fixture(scope="module")
def front() -> Front:
    group = typer.main.get_command(app)
    assert isinstance(group, Front)
    return group


@pytest.mark.parametrize("name", COMMANDS)
def test_each_line_of_the_help_is_its_commands_own(front: Front, name: str) -> None:
    command = front.get_command(Context(front), name)
    assert command is not None
    assert (command.help or "").splitlines()[0] == COMMANDS[name][1]


def test_the_list_leaves_no_command_out(front: Front) -> None:
    for name in COMMANDS:
        front.get_command(Context(front), name)
    assert set(front.commands) == set(COMMANDS)


def test_an_unknown_command_loads_nothing(front: Front) -> None:
    assert front.get_command(Context(front), "brew") is None
