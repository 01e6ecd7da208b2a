"""The front door: what is given before a command counts for it, and no word asks for help."""

import sys

import pytest

from cli import main
from tests.cli.shell import Shell


def test_options_may_stand_before_the_command(shell: Shell) -> None:
    told = shell.line("--by AB --json note {essence} Good.")
    assert (told.exit_code, told.json["code"]) == (0, "OE-001-5")


def test_without_a_command_it_says_where_to_begin(shell: Shell) -> None:
    told = shell.run()
    assert (told.exit_code, told.err) == (0, "")
    assert told.lines[-1] == "Next: pottle due"


def test_the_help_lists_the_commands(shell: Shell) -> None:
    told = shell.run("--help")
    whole = "The batch book of a small maker of soda-fountain essences and syrups."
    assert whole in [line.strip() for line in told.lines]
    assert "Record a delivery; opens a lot." in told.out


def test_for_machines_a_command_is_missing(shell: Shell) -> None:
    told = shell.run("--json")
    assert (told.exit_code, told.out) == (2, "")
    assert "Missing command." in told.err


def test_a_command_that_is_none_is_said_to_be_none(shell: Shell) -> None:
    told = shell.run("stir")
    assert told.exit_code == 2
    assert "No such command 'stir'" in told.err


def test_where_a_shell_has_closed_all_streams_it_speaks_to_nobody_and_nobody_answers(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    read: list[str] = []

    def work() -> None:
        print("said ½")
        print("complained ½", file=sys.stderr)
        read.append(sys.stdin.read())

    for name in ("stdin", "stdout", "stderr"):
        monkeypatch.setattr(sys, name, None)
    monkeypatch.setattr(main, "app", work)
    main.run()
    streams = (sys.stdin, sys.stdout, sys.stderr)
    assert read == [""]
    assert [stream.encoding for stream in streams] == ["utf-8"] * 3
    for stream in streams:
        stream.close()
