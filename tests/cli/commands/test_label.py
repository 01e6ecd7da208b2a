"""`pottle label`: a sheet of labels, and what became of them."""

from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell


def test_a_sheet_is_printed_and_counted(shell: Shell) -> None:
    answer = (
        "Recorded 39, labels BOS-001-S: 3 printed.\n"
        "The labels are in three.pdf.\n"
        "BOS-001-S, Orange syrup, 250 mL: 9 there, released.\n"
        "Next: pottle send BOS-001-S COUNT --to WHO\n"
    )
    check_answers(("label {packed} --out three.pdf --count 3", answer), shell)


def test_what_became_of_the_labels_is_recorded(shell: Shell) -> None:
    problem = (
        "16 labels used and spoiled are more than the 15 printed for BOS-001-S.",
        "Count the labels again; if it is so, say why with --because.",
    )
    check_refused(("label {packed} --used 15 --spoiled 1", 4, problem), shell)


def test_nothing_to_print_or_record_is_refused(shell: Shell) -> None:
    problem = (
        "Nothing was said to print or to record.",
        "Say where the sheet goes with --out, or how many labels were used with --used.",
    )
    check_refused(("label {packed}", 2, problem), shell)


def test_bulk_has_no_bottles_to_label(shell: Shell) -> None:
    problem = (
        "OE-001-5 is not a packed lot, so it has no bottles to label.",
        'Fill it first: pottle bottle OE-001-5 "15 x 250mL"',
    )
    check_refused(("label {essence} --out none.pdf", 3, problem), shell)
