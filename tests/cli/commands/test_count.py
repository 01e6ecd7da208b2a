"""`pottle count`: what it answers and when it is refused."""

import pytest

from tests.cli.asked import check_asked
from tests.cli.cases import Answers, Refused, check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown

ANSWERS: dict[str, Answers] = {
    "a count that agrees": (
        "count {sugar} 23.4kg --tare 800g",
        "Recorded 39, counted WS-001-R: 22.6 kg there.\n"
        "WS-001-R, White sugar: 22.6 kg, in stock.\n"
        'Next: pottle start --product "NAME" --kind KIND --target VOLUME\n',
    ),
    "a count that is a little less": (
        "count {water} 96 L",
        "Recorded 39, counted WTR-002-Y: 96 L there.\n"
        "WTR-002-Y, Water: 96 L, in stock.\n"
        "Note: 96 L of WTR-002-Y are there, 1.6 L less than the 97.6 L of the book. The book "
        "takes what was found.\n"
        'Next: pottle start --product "NAME" --kind KIND --target VOLUME\n',
    ),
}

REFUSED: dict[str, Refused] = {
    "a heavy vessel": (
        "count {sugar} 800g --tare 23.4kg",
        3,
        (
            "800g with the vessel and 23.4kg without it leave no weight.",
            "Give both as weights, the heavier first.",
        ),
    ),
    "much less than there should be": (
        "count {water} 50L",
        4,
        (
            "50L of WTR-002-Y are there, 47.6 L less than the 97.6 L of the book.",
            "Count again; if it is so, say why with --because.",
        ),
    ),
    "nothing where there should be something": (
        "count {water} 0",
        4,
        (
            "Nothing of WTR-002-Y is there, 97.6 L less than the 97.6 L of the book.",
            "Count again; if it is so, say why with --because.",
        ),
    ),
}


@pytest.mark.parametrize("answers", ANSWERS.values(), ids=list(ANSWERS))
def test_a_command_answers(answers: Answers, shell: Shell) -> None:
    check_answers(answers, shell)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_command_refuses_and_records_nothing(refused: Refused, shell: Shell) -> None:
    check_refused(refused, shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("count")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("count", still)
