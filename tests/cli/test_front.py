"""The list of commands says what the commands themselves say."""

import re
from pathlib import Path

import pytest
import typer
from typer._click import Context
from typer._click.exceptions import UsageError
from typer.testing import CliRunner

from cli.front import COMMANDS, Front
from cli.front import ROOMS as HEADINGS
from cli.main import app

HOME = Path(__file__).parents[2]
SENTENCES = ("ledger", "reports")
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
    sources = (path for room in SENTENCES for path in (HOME / room).rglob("*.py"))
    texts = (path.read_text(encoding="utf-8") for path in sources)
    named = {word for text in texts for word in re.findall(r"--[a-z][a-z-]*[a-z]", text)}
    assert "--because" in named
    assert named - options == set()


def test_every_room_has_its_heading_and_every_heading_is_a_line_of_its_own() -> None:
    told = CliRunner().invoke(app, ["--help"], prog_name="pottle").stdout.splitlines()
    assert {room for room, _ in COMMANDS.values()} == set(HEADINGS)
    places = [told.index(f"{heading}:") for heading in HEADINGS.values()]
    assert places == sorted(places)
    assert [told[place - 1] for place in places] == [""] * len(places)


@pytest.mark.parametrize(
    ("args", "problem"),
    [
        (["filtr"], "No such command 'filtr'. Did you mean filter?"),
        (["spirit"], "No such command 'spirit'. Did you mean pottle stock --spirit?"),
        (["xyzzy"], "No such command 'xyzzy'."),
        (["add", "--tmep", "3"], "No such option: --tmep. Did you mean --temp?"),
        (["add", "--xyzzy"], "No such option: --xyzzy."),
        (["add"], "Missing argument 'LOT'."),
        (["recall", "A", "--close"], "Option '--close' requires an argument."),
        (["recall", "A", "--close", "--because", "x"], "Option '--close' requires an argument."),
    ],
)
def test_what_is_near_to_a_slip_is_asked_for(args: list[str], problem: str) -> None:
    done = CliRunner().invoke(app, args, prog_name="pottle")
    called = " ".join(["pottle", *(args[:1] if args[0] in COMMANDS else [])])
    assert (done.exit_code, done.stdout) == (2, "")
    assert done.stderr.splitlines() == [problem, f"  See how it is called: {called} --help"]


def test_an_unknown_command_loads_nothing(front: Front) -> None:
    assert front.get_command(Context(front), "brew") is None


def test_words_that_are_wrong_are_raised_where_the_program_is_not_the_whole(front: Front) -> None:
    with pytest.raises(UsageError):
        front.main(["nonsense"], standalone_mode=False)
    with pytest.raises(SystemExit) as ended:
        front.main(["nonsense"])
    assert ended.value.code == 2


def test_commands_are_listed_in_the_order_of_the_work(front: Front) -> None:
    assert front.list_commands(Context(front)) == list(COMMANDS)
