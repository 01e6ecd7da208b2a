"""`pottle case`: bottles in cases, whose labels come next."""

from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell


def test_cases_get_numbers_and_their_labels_come_next(shell: Shell) -> None:
    answer = (
        "Recorded 39, put in cases BOS-001-S: 2 cases of 1, numbered 1 to 2.\n"
        "BOS-001-S, Orange syrup, 250 mL: 9 there, released.\n"
        "Next: pottle label BOS-001-S --kind case --out cases.pdf\n"
    )
    check_answers(("case {packed} 2 x 1", answer), shell)


def test_cases_of_what_is_not_bottled_are_refused(shell: Shell) -> None:
    problem = (
        "OS-002-M is not bottled, so nothing of it stands in cases.",
        'Fill it first: pottle bottle OS-002-M "15 x 250mL"',
    )
    check_refused(("case {syrup} 1 x 12", 3, problem), shell)
