"""`pottle clean`: what it answers."""

import pytest

from tests.cli.asked import check_asked
from tests.cli.cases import Answers, check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown

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


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("clean")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("clean", still)
