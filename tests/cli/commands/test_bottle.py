"""`pottle bottle`: a packed lot is opened, and the next step releases it."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_a_packed_lot_is_opened_and_released_next(shell: Shell) -> None:
    answer = (
        "Recorded 39, bottled BOS-004-M: 1 x 30 mL from Orange syrup, OS-002-M, 30 mL drawn, a "
        "fill weighed 41.2 g.\n"
        "BOS-004-M, Orange syrup, 30 mL: 1 there, packed.\n"
        "Next: pottle release BOS-004-M\n"
    )
    check_answers(("bottle {syrup} 1 x 30mL --fill-check 41.2 --because sample", answer), shell)


def test_more_than_is_there_needs_a_reason(shell: Shell) -> None:
    problem = (
        "500 mL is more than is there of OS-002-M: the book says 50 mL.",
        "Check the lot and the amount; if it is so, say why with --because.",
    )
    check_refused(("bottle {syrup} 2 x 250mL", 4, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("bottle")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("bottle", still)
