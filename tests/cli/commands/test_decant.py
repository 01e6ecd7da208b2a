"""`pottle decant`: what was drawn off and what heel is left."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_what_was_drawn_off_and_left_is_said(shell: Shell) -> None:
    shell.line("start --product Lime --kind essence --target 90mL")
    shell.line("add LIME-002-M {spirit} 90mL")
    answer = (
        "Recorded 41, decanted LIME-002-M: 80 mL drawn off, 8 mL heel left.\n"
        "LIME-002-M, Lime: 80 mL, being made.\n"
        "Next: pottle look LIME-002-M GRADE --of neat\n"
    )
    check_answers(("decant LIME-002-M 80mL --heel 8mL", answer), shell)


def test_more_than_is_there_is_refused(shell: Shell) -> None:
    problem = (
        "900mL was drawn off, but OE-001-5 held less: the book says 418 mL.",
        "Record what else went in first: pottle add ...",
    )
    check_refused(("decant {essence} 900mL", 3, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("decant")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("decant", still)
