"""`pottle equipment`: what it answers."""

import pytest

from tests.cli.asked import check_asked
from tests.cli.cases import Answers, check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown

ANSWERS: dict[str, Answers] = {
    "an instrument": (
        "equipment 'Scale 1' set to zero",
        "Recorded 39, equipment: Scale 1, set to zero.\nNext: pottle due\n",
    ),
}


@pytest.mark.parametrize("answers", ANSWERS.values(), ids=list(ANSWERS))
def test_a_command_answers(answers: Answers, shell: Shell) -> None:
    check_answers(answers, shell)


def test_an_instrument_without_words_is_refused(shell: Shell) -> None:
    problem = (
        "The finding is missing.",
        "Give the finding in words.",
    )
    check_refused(("equipment 'Scale 1' ' '", 2, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("equipment")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("equipment", still)
