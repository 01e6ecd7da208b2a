"""`pottle strike`: an entry does not count any more and stays readable."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_what_was_sent_by_mistake_is_here_again(shell: Shell) -> None:
    answer = (
        "Recorded 39: entry 37 of BOS-001-S is struck out.\n"
        "BOS-001-S, Orange syrup, 250 mL: 15 there, released.\n"
        "Next: pottle journal --entry 37\n"
    )
    check_answers(('strike 37 --because "wrong lot"', answer), shell)


def test_an_entry_is_not_struck_without_a_reason(shell: Shell) -> None:
    problem = (
        "Entry 37 cannot be changed without a reason.",
        'Say why: --because "what was wrong"',
    )
    check_refused(("strike 37", 4, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("strike")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("strike", still)
