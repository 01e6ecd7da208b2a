"""`pottle filter`: each pass is counted, with what went in and came out."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_a_pass_is_counted_with_what_went_in_and_came_out(shell: Shell) -> None:
    shell.line("start --product Lime --kind essence --target 90mL")
    shell.line("add LIME-002-M {spirit} 90mL")
    answer = (
        "Recorded 41, filtered LIME-002-M: pass 1 through paper, 5 µm, 90 mL in, 85 mL out, "
        "precoat 5 g.\n"
        "LIME-002-M, Lime: 85 mL, being made.\n"
        "Note: No first runnings were returned on the first pass: they carry fines and "
        "fibres. Return them until they run bright, and say how much with --first-runnings.\n"
        "Next: pottle look LIME-002-M GRADE --of neat\n"
    )
    check_answers(
        ("filter LIME-002-M --medium paper --pore 5 --out 85mL --precoat 5g", answer), shell
    )


def test_a_pore_size_that_is_none_is_refused(shell: Shell) -> None:
    problem = ('"1-2-3" is not a pore size.', "Write it in µm as 20 or 20-25.")
    command = "filter {essence} --medium paper --pore 1-2-3 --out 400mL"
    check_refused((command, 2, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("filter")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("filter", still)
