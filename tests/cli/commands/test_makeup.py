"""`pottle makeup`: the book works out what it took."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_the_book_works_out_what_it_took(shell: Shell) -> None:
    shell.line("start --product Lime --kind essence --target 90mL")
    shell.line("add LIME-002-M {spirit} 80mL")
    answer = (
        "Recorded 41, made up LIME-002-M: to 90 mL with 10 mL of Neutral spirit 96 %, NS-001-J.\n"
        "LIME-002-M, Lime: 90 mL, being made.\n"
        "Next: pottle look LIME-002-M GRADE --of neat\n"
    )
    check_answers(("makeup LIME-002-M 90mL --with {spirit}", answer), shell)


def test_less_than_is_there_is_refused(shell: Shell) -> None:
    problem = (
        "OE-001-5 holds 418 mL already, so it cannot be made up to 400mL.",
        "Measure it and give a larger volume, or record a plain addition: pottle add ...",
    )
    check_refused(("makeup {essence} 400mL --with {spirit}", 3, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("makeup")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("makeup", still)
