"""`pottle clean`: what it answers."""

import pytest

from tests.cli.cases import Answers, check_answers, check_refused
from tests.cli.shell import Shell

ANSWERS: dict[str, Answers] = {
    "a cleaning": (
        "clean Demijohn 2 --how 'Hot water' --held Lemon",
        "Recorded 39, cleaned: Demijohn 2, Hot water, held Lemon.\n"
        'Next: pottle start --product "NAME" --kind KIND --target VOLUME\n',
    ),
}


@pytest.mark.parametrize("answers", ANSWERS.values(), ids=list(ANSWERS))
def test_a_command_answers(answers: Answers, shell: Shell) -> None:
    check_answers(answers, shell)


def test_a_cleaning_in_no_way_is_refused(shell: Shell) -> None:
    problem = (
        "The way of cleaning is missing.",
        "Give the way of cleaning in words.",
    )
    check_refused(("clean Demijohn 2 --how ' '", 2, problem), shell)
