"""The help of a command, by its name."""

import pytest

from cli.screens.guide import help as module
from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.said import check_constants


@pytest.mark.parametrize("words", [("add",), ("material", "add"), ("trial",)])
def test_the_help_of_a_command_is_what_it_says_itself(bare: Shell, words: tuple[str, ...]) -> None:
    assert bare.run("help", *words).out == bare.run(*words, "--help").out


def test_without_a_word_all_commands_are_listed(bare: Shell) -> None:
    assert bare.run("help").out == bare.run("--help").out


def test_the_options_that_all_commands_have_are_told_once(bare: Shell) -> None:
    lines = bare.run("help", "options").lines
    assert lines[0] == "These options stand before or after any command that takes them."
    assert [line.split()[0] for line in lines if line.startswith("  --")] == [
        *("--ledger", "--by", "--at", "--because", "--origin", "--sheet", "--json")
    ]


@pytest.mark.parametrize(
    ("words", "what"),
    [
        (("filtr",), "There is no command filtr. Did you mean filter?"),
        (("material", "ad"), "There is no command material ad. Did you mean add?"),
        (("add", "more"), "There is no command add more."),
        (("option",), "There is no command option. Did you mean options?"),
    ],
)
def test_a_command_that_is_none_is_said_to_be_none(
    bare: Shell, words: tuple[str, ...], what: str
) -> None:
    answer = bare.run("help", *words)
    assert (answer.exit_code, answer.out) == (2, "")
    assert answer.complaints == [what, "  pottle --help lists them all."]


def test_for_machines_the_help_is_a_text(bare: Shell) -> None:
    answer = bare.run("help", "add", "--json")
    assert answer.json == {"topic": "add", "text": bare.run("help", "add").out.rstrip("\n")}


def test_the_version_is_told(bare: Shell) -> None:
    answer = bare.run("--version")
    assert answer.exit_code == 0
    assert answer.out.startswith("pottle 0.")


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("help")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("help", still)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
