"""`pottle label`: a sheet of labels, and what became of them."""

from pathlib import Path

import pypdfium2 as pdfium  # type: ignore[import-untyped]

from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.reports.pdf.readback import text_of


def test_a_sheet_is_printed_and_counted(shell: Shell) -> None:
    answer = (
        "Recorded 39, labels BOS-001-S: 3 printed.\n"
        "The labels are in three.pdf.\n"
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


def test_labels_that_are_on_no_bottle_are_printed_and_not_recorded(shell: Shell) -> None:
    before = shell.entries()
    done = shell.line("label {oil} --kind received --also {spirit} --layout 2x5 --out shelf.pdf")
    assert done.lines == ["The labels are in shelf.pdf."]
    text = text_of(Path("shelf.pdf").read_bytes())
    assert "Lot SOO-001-3" in text
    assert "Lot NS-001-J" in text
    frames = shell.line("label --calibrate --layout 3x7 --out frames.pdf --json")
    assert frames.json == {"path": "frames.pdf"}
    assert shell.entries() == before


def test_options_of_other_labels_and_a_layout_that_is_none_are_refused(shell: Shell) -> None:
    wrong = (
        ("label {oil} --kind received --out a.pdf --specimen", 2),
        ("label {packed} --gtin 9521234543214 --out a.pdf", 2),
        ("label {packed} --layout 9x9 --out a.pdf", 3),
        ("label {packed} --kind hold", 2),
        ("label --out a.pdf", 2),
        ("label {packed} --language eo --out a.pdf", 2),
        ("label {packed} --start-at 99 --out a.pdf", 3),
        ("label {packed} --dpi 72 --out a.pdf", 2),
        ("label {packed} --layouts missing.toml --out a.pdf", 5),
    )
    before = shell.entries()
    for line, code in wrong:
        found = shell.line(line)
        assert (found.exit_code, found.out) == (code, ""), line
        assert "Traceback" not in found.err
    assert shell.entries() == before
    assert not Path("a.pdf").exists()


def test_own_layouts_are_read_from_a_file(shell: Shell) -> None:
    Path("own.toml").write_text(
        '[[layout]]\nname = "own"\npage = [110.0, 60.0]\nacross = 1\ndown = 1\n'
        "width = 110.0\nheight = 60.0\n",
        encoding="utf-8",
    )
    done = shell.line("label {packed} --count 2 --layouts own.toml --out own.pdf")
    assert done.exit_code == 0, done.err
    assert text_of(Path("own.pdf").read_bytes()).count("Lot BOS-001-S") == 2


def test_a_house_that_prints_on_letter_has_its_labels_on_letter(shell: Shell) -> None:
    """ANSI/ASME Y14.1: Letter is 8.5 by 11 inches, 612 by 792 points."""
    shell.line("house --country US")
    assert shell.line("label {packed} --count 2 --out letter.pdf").exit_code == 0
    assert shell.line("record {packed} --out record.pdf").exit_code == 0
    for name in ("letter.pdf", "record.pdf"):
        with pdfium.PdfDocument(Path(name)) as document:
            assert document[0].get_size() == (612, 792)
