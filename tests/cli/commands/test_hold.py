"""`pottle hold`: a lot stops, and its trace forward comes next."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_a_lot_on_hold_is_traced_forward_next(shell: Shell) -> None:
    answer = (
        "Recorded 39, judged BOS-001-S: put on hold.\n"
        "BOS-001-S, Orange syrup, 250 mL: 9 there, on hold.\n"
        "Next: pottle trace BOS-001-S --forward\n"
    )
    check_answers(('hold {packed} --because "looks hazy"', answer), shell)


def test_a_lot_that_is_not_there_is_refused(shell: Shell) -> None:
    problem = (
        "There is no lot XX-1 in the book.",
        "pottle stock lists the lots that are.",
    )
    check_refused(("hold XX-1", 3, problem), shell)


def test_a_hold_says_why(shell: Shell) -> None:
    problem = (
        "BOS-001-S cannot be put on hold without a reason.",
        'Say why: --because "a customer found a ring"',
    )
    check_refused(("hold {packed}", 4, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("hold")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("hold", still)
