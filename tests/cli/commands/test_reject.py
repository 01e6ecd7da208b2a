"""`pottle reject`: where it is the next step, and what follows."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_a_batch_past_its_date_is_rejected_next_whether_or_not_it_has_a_formula(
    shell: Shell,
) -> None:
    """A release would be refused, so it is not proposed."""
    oil = shell.line("receive orange-oil 100mL --best-before 2020-06-30 --at 2020-03-01 --json")
    begin = "start --product 'Old essence' --kind essence --target 90mL --at 2020-03-02 --json"
    batch = shell.line(begin).json["code"]
    shell.line(f"add {batch} {oil.json['code']} 90mL --at '2020-03-02 10:00'")
    shell.line(f"look {batch} bright --of neat --at '2020-03-02 11:00'")
    made = shell.line(f"finish {batch} 90mL --at '2020-03-02 12:00'")
    rejected = f'pottle reject {batch} --because "past its date"'
    assert made.lines[-1] == f"Next: {rejected}"
    assert shell.line(f"lot {batch}").lines[-1] == f"Next: {rejected}"
    assert shell.line(rejected.removeprefix("pottle ")).exit_code == 0
    assert shell.line(f"lot {batch}").lines[-1] == f"Next: pottle trace {batch} --forward"


def test_a_rejection_says_why(shell: Shell) -> None:
    problem = (
        "LMC-001-F cannot be rejected without a reason.",
        'Say why: --because "smells of solvent"',
    )
    check_refused(("reject {carb}", 4, problem), shell)


def test_a_rejected_lot_is_traced_forward_next(shell: Shell) -> None:
    answer = (
        "Recorded 39, judged LMC-001-F: rejected.\n"
        "LMC-001-F, Light magnesium carbonate: 485 g, rejected.\n"
        "Next: pottle trace LMC-001-F --forward\n"
    )
    check_answers(('reject {carb} --because "clumped"', answer), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("reject")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("reject", still)
