"""`pottle look`: how clear a lot looked, and what comes next."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_a_look_is_said_with_how_it_was_looked_at(shell: Shell) -> None:
    answer = (
        "Recorded 39, looked at OS-002-M: clear, as poured, 1:7, 1.2 NTU.\n"
        "OS-002-M, Orange syrup: 50 mL, finished.\n"
        "Note: 51 mg/L of orange oil looked clear as poured, where the drink dissolves 30 % of "
        "it at the best. Was it the syrup that was looked at, or has the oil risen as a ring? "
        "Look again in the glass; if the entry is wrong, correct it.\n"
        "Next: pottle release OS-002-M\n"
    )
    check_answers(("look {syrup} clear --of as-poured --dilution 1:7 --ntu 1.2", answer), shell)


def test_a_grade_nobody_knows_is_refused(shell: Shell) -> None:
    problem = (
        '"murky" is not a grade of clarity.',
        "Choose one of: bright, clear, hazy, opalescent, cloudy, milky.",
    )
    check_refused(("look {essence} murky", 2, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("look")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("look", still)
