"""`pottle add`: what went in is said, with what is there now."""

import pytest

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_what_went_in_is_said_with_what_is_there_now(shell: Shell) -> None:
    answer = (
        "Recorded 39, added OS-002-M: 500 mL of Water, WTR-002-Y, as top-up, at 18 °C, over "
        "5 min.\n"
        "OS-002-M, Orange syrup: about 550 mL, reckoned, being made.\n"
        "Note: OS-002-M was finished already; this opens it again. Look at it, and finish it "
        "again with what came out: pottle finish OS-002-M VOLUME\n"
        "Next: pottle look OS-002-M GRADE --of neat\n"
    )
    check_answers(("add {syrup} {water} 500 mL --temp 18 --took 5min --as top-up", answer), shell)


def test_the_same_again_within_minutes_needs_a_reason(shell: Shell) -> None:
    shell.line("add {syrup} {water} 100mL")
    problem = (
        "100mL of Water, WTR-002-Y, went into OS-002-M just before, in entry 39.",
        "If the command was given twice, leave it; if as much went in again, say so with "
        "--because.",
    )
    check_refused(("add {syrup} {water} 100mL", 4, problem), shell)
    assert shell.line("add {syrup} {water} 100mL --because more").exit_code == 0


@pytest.mark.parametrize("words", ["--over 5min", "--over=5min"])
def test_what_an_option_was_called_before_still_works(words: str, shell: Shell) -> None:
    """For machines without a word, since they read what is said of errors."""
    told = shell.line(f"add {{syrup}} {{water}} 500mL {words}")
    assert (told.exit_code, "over 5 min" in told.lines[0]) == (0, True)
    assert told.complaints == ["Note: --over is called --took now; --over still works."]
    quiet = shell.line(f"add {{syrup}} {{water}} 400mL {words} --json")
    assert (quiet.exit_code, quiet.err) == (0, "")


def test_a_figure_below_zero_is_no_amount(shell: Shell) -> None:
    problem = (
        "An amount must be more than zero, and −5mL is not.",
        "Write how much there really was.",
    )
    check_refused(("add {essence} {oil} -5mL", 3, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("add")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("add", still)
