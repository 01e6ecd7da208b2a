"""`pottle measure`: a reading with its unit and temperature."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_a_reading_is_said_with_its_unit_and_temperature(shell: Shell) -> None:
    answer = (
        "Recorded 39, measured OE-001-5: abv 85.0 %, at 20 °C.\n"
        "OE-001-5, Orange essence: 418 mL, released.\n"
        "Note: OE-001-5 was measured at 85.0 % vol, and the book reckons 89.9 % vol, which an "
        "instrument may show as 89.9 to 95.4; for the doubt of both they may differ by 2.1. "
        "Read it again; if it stays so, something else or another amount went in: "
        "pottle journal OE-001-5\n"
        'Next: pottle start --product "NAME" --kind syrup --target VOLUME\n'
    )
    check_answers(("measure {essence} abv 85.0 --temp 20", answer), shell)


def test_words_are_no_reading(shell: Shell) -> None:
    problem = (
        '"heavy" is not a brix in °Bx.',
        "Write a number in °Bx.",
    )
    check_refused(("measure {essence} brix heavy", 2, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("measure")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("measure", still)
