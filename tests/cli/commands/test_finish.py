"""`pottle finish`: what came out, and the next step."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_what_came_out_is_said_and_a_look_comes_next(shell: Shell) -> None:
    shell.line("start --product Lime --kind essence --target 90mL")
    shell.line("add LIME-002-M {spirit} 90mL")
    answer = (
        "Recorded 41, finished LIME-002-M: 80 mL came out, 5 mL spilt or thrown away.\n"
        "LIME-002-M, Lime: 80 mL, finished.\n"
        "Next: pottle look LIME-002-M GRADE --of neat\n"
    )
    check_answers(("finish LIME-002-M 80mL --waste 5mL", answer), shell)


def test_more_than_went_in_is_refused(shell: Shell) -> None:
    problem = (
        "3.7L came out, but OS-002-M held less: the book says 50 mL.",
        "Record what else went in first: pottle add ...",
    )
    check_refused(("finish {syrup} 3.7L", 3, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("finish")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("finish", still)
