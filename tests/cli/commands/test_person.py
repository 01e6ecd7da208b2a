"""`pottle person`: who writes in the book."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_somebody_new_is_entered(shell: Shell) -> None:
    answer = "Recorded 39, person: CD is Cleo Dunn, bottler.\nNext: pottle due\n"
    check_answers(('person add CD "Cleo Dunn" --role bottler', answer), shell)


def test_the_list_has_everybody_with_what_they_do(shell: Shell) -> None:
    shell.line('person add CD "Cleo Dunn" --role bottler')
    answer = "initials  name       role\nAB        Anna Bell\nCD        Cleo Dunn  bottler\n"
    check_answers(("person list", answer), shell)


def test_initials_that_are_taken_are_refused(shell: Shell) -> None:
    problem = (
        "The initials AB are in the book already.",
        "Choose others for this person.",
    )
    check_refused(('person add ab "Abel"', 3, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("person")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("person", still)
