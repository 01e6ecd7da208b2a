"""`pottle rest`: a rest begins, and its end is the next step."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_a_rest_begins_and_is_ended_next(shell: Shell) -> None:
    shell.line("start --product Lime --kind essence --target 90mL")
    answer = (
        "Recorded 40, rest LIME-002-M: to chill, begun, at −4 °C.\n"
        "LIME-002-M, Lime: 0 mL, being made.\n"
        "Next: pottle rest LIME-002-M --end\n"
    )
    check_answers(("rest LIME-002-M --for chill --temp -4", answer), shell)


def test_no_rest_that_never_began_ends(shell: Shell) -> None:
    problem = (
        "OE-001-5 is not resting, so no rest can end.",
        "Begin one with: pottle rest OE-001-5 --for macerate",
    )
    check_refused(("rest {essence} --end", 3, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("rest")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("rest", still)
