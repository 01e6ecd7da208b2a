"""`pottle compare`: what a trial of one batch and of two say."""

import pytest

from tests.cli.asked import check_asked
from tests.cli.shell import Shell

REFUSALS: dict[str, tuple[str, int, str, str]] = {
    "an unknown trial": (
        "compare rests",
        3,
        'There is no trial "rests" in the book. It has no trial yet.',
        'Begin a batch of one: pottle start ... --trial "rests" --factor rest=48h',
    ),
}


@pytest.mark.parametrize(("command", "code", "what", "todo"), REFUSALS.values(), ids=list(REFUSALS))
def test_what_cannot_be_asked_is_said_in_words(
    shell: Shell, command: str, code: int, what: str, todo: str
) -> None:
    answer = shell.line(command)
    assert (answer.exit_code, answer.out) == (code, "")
    assert answer.complaints == [what, f"  {todo}"]


def test_a_trial_of_one_batch_compares_with_nothing(shell: Shell) -> None:
    shell.line("start --product Jar --kind essence --target 90mL --trial rests --factor rest=24h")
    answer = shell.line("compare rests")
    assert (answer.exit_code, answer.complaints) == (
        3,
        [
            'The trial "rests" has one batch, and one batch compares with nothing.',
            '  Begin another of it: pottle start ... --trial "rests" --factor rest=48h',
        ],
    )


def test_two_batches_of_one_trial_are_compared(shell: Shell) -> None:
    for hours in (24, 48):
        shell.line(
            f"start --product Jar --kind essence --target 90mL --trial rests --factor rest={hours}h"
        )
    answer = shell.line("compare rests")
    assert (answer.exit_code, answer.err) == (0, "")
    assert answer.lines[0] == (
        "Trial rests: 2 batches, none of them a control. In all of them: no lot."
    )


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("compare")
