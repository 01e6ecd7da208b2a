"""`pottle case`: bottles in cases, whose labels come next."""

from pathlib import Path

import pytest

from tests.cli.asked import check_asked
from tests.cli.cases import Refused, check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.reports.pdf.readback import images_of, symbols_of


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


def test_each_case_has_a_label_whose_bars_and_symbol_are_its_number(shell: Shell) -> None:
    """Numbers of GS1: the prefix of its examples, 9521234."""
    shell.run("house", "--company-prefix", "9521234")
    shell.line("case {packed} 2 x 1")
    done = shell.line("label {packed} --kind case --layout 100x50 --out cases.pdf --case 2")
    assert done.lines == ["The labels are in cases.pdf."]
    (image,) = images_of(Path("cases.pdf").read_bytes())
    assert sorted(symbols_of(image)) == [
        "(00)095212340000000020",
        "https://id.gs1.org/00/095212340000000020",
    ]


@pytest.mark.parametrize(
    "case",
    [
        (
            "label {packed} --kind case --case 7 --out cases.pdf",
            3,
            (
                "The book knows of no case 7 of BOS-001-S.",
                "pottle journal BOS-001-S tells which there are.",
            ),
        ),
        (
            "label {packed} --case 1 --out labels.pdf",
            2,
            (
                "--case goes with the labels of cases that were told of.",
                "Give --kind case without --gtin, or leave --case out.",
            ),
        ),
    ],
)
def test_no_label_is_printed_of_a_case_that_nobody_told_of(case: Refused, shell: Shell) -> None:
    check_refused(case, shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("case")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("case", still)
