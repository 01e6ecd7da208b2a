"""`pottle check`: what it answers and when it is refused."""

import pytest

from tests.cli.asked import check_asked
from tests.cli.cases import Answers, Refused, check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown

ANSWERS: dict[str, Answers] = {
    "a check of a lot": (
        "check {essence} the balance",
        "Recorded 39, checked OE-001-5: the lot, the balance.\n"
        "OE-001-5, Orange essence: 418 mL, released.\n"
        "Note: This is no second check: AB worked on OE-001-5. Have it checked: pottle check "
        "OE-001-5 --by INITIALS\n"
        'Next: pottle start --product "NAME" --kind syrup --target VOLUME\n',
    ),
    "a check of an entry": (
        "check --entry 18 read it",
        "Recorded 39, checked OE-001-5: entry 18, read it.\n"
        "OE-001-5, Orange essence: 418 mL, released.\n"
        "Note: This is no second check: entry 18 is AB's own. Have it checked: pottle check "
        "--entry 18 --by INITIALS\n"
        'Next: pottle start --product "NAME" --kind syrup --target VOLUME\n',
    ),
    "a check of what is about no lot": (
        "check --entry 1",
        "Recorded 39, checked: entry 1.\nNext: pottle journal --entry 1\n",
    ),
}

REFUSED: dict[str, Refused] = {
    "a check of nothing": (
        "check",
        2,
        (
            "A check is of a lot or of one entry.",
            "Name the lot, or give --entry with the number of the entry.",
        ),
    ),
    "a check of no entry": (
        "check --entry 999",
        3,
        (
            "There is no entry 999 in the book.",
            "pottle journal lists the entries with their numbers.",
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
    check_asked("check")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("check", still)
