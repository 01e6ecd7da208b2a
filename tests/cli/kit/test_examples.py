"""Every example that stands in a help is played, one after the other, on one book."""

import shlex
from pathlib import Path

import pytest
from typer.testing import CliRunner

from cli.kit.examples import EXAMPLES
from cli.main import app
from tests.cli.formulas import write_formulas
from tests.cli.schemas import verbs
from tests.cli.shell import Shell

PLAYED_ELSEWHERE = {"demo": "it takes its time, and its own test plays this very command"}
"""Commands whose example is played in their own tests."""


def test_every_command_has_an_example_and_nothing_else_has() -> None:
    assert set(EXAMPLES) == {" ".join(verb) for verb in verbs()}
    assert all(line.startswith(name) for name, lines in EXAMPLES.items() for line in lines)


def test_all_examples_are_done_in_their_order(shell: Shell) -> None:
    write_formulas()
    Path("evening.txt").write_text("cloudy 21\nundo\n", encoding="utf-8")
    Path("labels.pdf").unlink(missing_ok=True)
    for name, lines in EXAMPLES.items():
        for line in () if name in PLAYED_ELSEWHERE else lines:
            words = shlex.split(line)
            given = Path(words[-1]).read_text(encoding="utf-8") if "<" in words else ""
            words = words[: words.index("<")] if "<" in words else words
            answer = shell.run(*words, given=given)
            assert answer.exit_code == 0, (line, answer.err)


@pytest.mark.parametrize("name", ["add", "material add", "trial plan"])
def test_the_help_of_a_command_ends_with_its_examples(name: str) -> None:
    told = CliRunner().invoke(app, [*name.split(), "--help"], prog_name="pottle").stdout
    lines = [f"  pottle {line}" for line in EXAMPLES[name]]
    assert told.splitlines()[-len(lines) - 1 :] == ["Examples:", *lines]


def test_the_options_of_all_commands_are_one_line_of_the_help() -> None:
    told = CliRunner().invoke(app, ["add", "--help"], prog_name="pottle").stdout
    assert "--ledger PATH" not in told
    common = "--ledger, --by, --at, --because, --origin, --sheet, --json"
    line = f"Common options: {common}; see pottle help options."
    assert " ".join(told.split()).count(line) == 1
