"""`pottle rinse`: kept apart, the liquor opens a lot of its own."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_kept_apart_the_liquor_opens_a_lot(shell: Shell) -> None:
    shell.line("start --product Lime --kind essence --target 90mL")
    shell.line("add LIME-002-M {spirit} 90mL")
    answer = (
        "Recorded 41, cake rinsed RL-001-3: with 20 mL of Neutral spirit 96 %, NS-001-J, 15 mL "
        "ran through, kept apart.\n"
        "RL-001-3, Rinse liquor: 15 mL, in stock.\n"
        "Next: pottle look RL-001-3 GRADE --of neat\n"
    )
    check_answers(
        ("rinse LIME-002-M --with {spirit} --in 20mL --out 15mL --to apart", answer), shell
    )


def test_a_place_nobody_knows_is_refused(shell: Shell) -> None:
    problem = (
        '"drain" is not a place where the rinse went.',
        "Choose one of: batch, apart, waste.",
    )
    check_refused(
        ("rinse {essence} --with {spirit} --in 20mL --out 15mL --to drain", 2, problem), shell
    )


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("rinse")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("rinse", still)
