"""`pottle record`: where the paper is, and never over a file."""

from pathlib import Path

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.reports.pdf.readback import text_of


def test_the_paper_of_a_batch_is_where_it_was_asked_for(shell: Shell) -> None:
    answer = (
        "The record of OE-001-5 is in record.pdf.\n"
        'Next: pottle start --product "NAME" --kind syrup --target VOLUME\n'
    )
    check_answers(("record {essence} --out record.pdf", answer), shell)


def test_a_file_that_is_there_is_left(shell: Shell) -> None:
    shell.line("record {essence} --out record.pdf")
    problem = (
        "There is a file record.pdf already; it was left as it is.",
        "Give another name with --out, or --force to write over it.",
    )
    check_refused(("record {essence} --out record.pdf", 5, problem), shell)


def test_the_record_of_bottles_has_a_specimen_of_their_label_and_that_of_a_batch_none(
    shell: Shell,
) -> None:
    for lot in ("packed", "essence"):
        assert shell.line(f"record {{{lot}}} --out {lot}.pdf").exit_code == 0
        has_specimen = "Specimen label" in text_of(Path(f"{lot}.pdf").read_bytes())
        assert has_specimen is (lot == "packed")


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("record")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("record", still)


def test_where_a_record_goes_is_looked_at_before_its_lot(shell: Shell) -> None:
    Path("mine.pdf").write_text("mine", encoding="utf-8")
    problem = (
        "There is a file mine.pdf already; it was left as it is.",
        "Give another name with --out, or --force to write over it.",
    )
    check_refused(("record NONE-1 --out mine.pdf", 5, problem), shell)
