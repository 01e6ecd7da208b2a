"""The list of commands says what the commands themselves say."""

import re
from pathlib import Path

import pytest
import typer
from typer._click import Context

from cli.front import COMMANDS, Front
from cli.main import app

HOME = Path(__file__).parents[2]
ROOMS = ("ledger", "reports")
"""Rooms whose sentences tell a maker what to type."""


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


def test_every_option_that_a_sentence_names_is_one(front: Front) -> None:
    found = (front.get_command(Context(front), name) for name in COMMANDS)
    waiting, options = [command for command in found if command], set[str]()
    while waiting:
        command = waiting.pop()
        waiting += getattr(command, "commands", {}).values()
        options.update(word for item in command.params for word in item.opts)
    sources = (path for room in ROOMS for path in (HOME / room).rglob("*.py"))
    texts = (path.read_text(encoding="utf-8") for path in sources)
    named = {word for text in texts for word in re.findall(r"--[a-z][a-z-]*[a-z]", text)}
    assert "--because" in named
    assert named - options == set()


def test_an_unknown_command_loads_nothing(front: Front) -> None:
    assert front.get_command(Context(front), "brew") is None
