"""`pottle label`: a sheet of labels, and what became of them."""

from pathlib import Path

from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.reports.pdf.readback import text_of


def test_a_sheet_is_printed_and_counted(shell: Shell) -> None:
    answer = (
        "Recorded 39, labels BOS-001-S: 3 printed.\n"
        "The labels are in three.pdf.\n"
        "Missing for what it declares: facts of orange-oil, spirit, sugar. What to record: "
        "pottle serving BOS-001-S\n"
        "BOS-001-S, Orange syrup, 250 mL: 9 there, released.\n"
        "Note: 15 labels of BOS-001-S were printed before; with these 18 are more than its 15 "
        "bottles. Say what becomes of all of them: pottle label BOS-001-S --used N --spoiled N\n"
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


def test_labels_of_what_is_on_hold_say_so_across_and_have_a_reason(shell: Shell) -> None:
    shell.line('hold {packed} --because "a ring"')
    problem = (
        "BOS-001-S is on hold.",
        "Print no labels for it; if it must be, say why with --because: they are printed with "
        "HOLD across.",
    )
    check_refused(("label {packed} --out held.pdf", 4, problem), shell)
    assert not Path("held.pdf").exists()
    done = shell.line('label {packed} --out held.pdf --count 2 --because "for the shelf"')
    assert done.lines[:2] == [
        "Recorded 40, labels BOS-001-S: 2 printed, with HOLD across.",
        "The labels are in held.pdf, each with HOLD across.",
    ]
    assert text_of(Path("held.pdf").read_bytes()).split().count("HOLD") == 2


def test_a_specimen_is_no_bottle_label(shell: Shell) -> None:
    done = shell.line("label {packed} --out specimen.pdf --specimen --json")
    assert (done.exit_code, done.json["across"], done.json["remarks"]) == (0, "SPECIMEN", [])
    assert "SPECIMEN" in text_of(Path("specimen.pdf").read_bytes())
