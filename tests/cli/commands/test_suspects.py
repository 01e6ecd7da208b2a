"""Looking for causes from the command: what is asked, and how it ends."""

import pytest

from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_a_finding_is_no_failure_and_the_next_step_ends_it(shell: Shell) -> None:
    answer = shell.line("suspects {packed}")
    assert (answer.exit_code, answer.err) == (0, "")
    assert "Too few to tell." in answer.out
    assert answer.lines[-1].startswith("Next: pottle ")


def test_the_method_is_told_only_when_asked_for(shell: Shell) -> None:
    assert "How it is reckoned" not in shell.line("suspects").out
    assert "How it is reckoned" in shell.line("suspects --explain").out


def test_nothing_failed_is_said_in_words(shell: Shell) -> None:
    answer = shell.line("suspects --from 2030-01-01")
    assert answer.exit_code == 0
    assert answer.lines[0] == (
        "No lot that was asked about failed: none looked worse than wanted, nobody complained."
    )
    assert answer.lines[-1] == "Next: pottle stock"


REFUSALS: dict[str, tuple[str, int, str, str]] = {
    "an unknown lot": (
        "suspects ZZ-1",
        3,
        "There is no lot ZZ-1 in the book.",
        "pottle stock lists the lots that are.",
    ),
    "a lot that was bought": (
        "suspects {spirit}",
        3,
        "NS-001-J was bought, and suspects compares lots that were made here.",
        "Name what was made with it: pottle trace NS-001-J --forward",
    ),
    "an unknown grade": (
        "suspects --worse-than foggy",
        2,
        '"foggy" is not a clarity.',
        "Choose one of: bright, clear, hazy, opalescent, cloudy, milky.",
    ),
}


@pytest.mark.parametrize(("command", "code", "what", "todo"), REFUSALS.values(), ids=list(REFUSALS))
def test_what_cannot_be_asked_is_said_in_words(
    shell: Shell, command: str, code: int, what: str, todo: str
) -> None:
    answer = shell.line(command)
    assert (answer.exit_code, answer.out) == (code, "")
    assert answer.complaints == [what, f"  {todo}"]


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("suspects")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("suspects", still)
