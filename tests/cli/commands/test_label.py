"""`pottle label`: a sheet of labels, and what became of them."""

from pathlib import Path
from types import ModuleType
from typing import Any
from unittest.mock import Mock

import pypdfium2 as pdfium  # type: ignore[import-untyped]
import pytest

from cli.screens.goods import label as cli_screens_goods_label
from cli.screens.goods import tags as cli_screens_goods_tags
from cli.screens.goods.label import _how_to_print_again, _what_is_recorded
from reports.pdf.goods.layouts import USUAL, shipped_layouts
from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.said import check_constants
from tests.reports.pdf.readback import text_of, texts_of


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


def test_a_front_and_a_back_are_counted_as_one_label(shell: Shell) -> None:
    """Eight labels of two panels on sheets of ten places: five pairs, then three."""
    done = shell.line("label {packed} --out both.pdf --count 8 --panels 2 --layout 2x5")
    assert done.lines[:3] == [
        "Recorded 39, labels BOS-001-S: 8 printed.",
        "The labels are in both.pdf.",
        "Each is a front and a back, next to each other; a pair counts as one label.",
    ]
    pages = texts_of(Path("both.pdf").read_bytes())
    assert [page.count("Lot BOS-001-S\n") for page in pages] == [5, 3]
    assert [page.count("250 mL") for page in pages] == [5, 3]


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
        ("label {packed} --panels 3 --out a.pdf", 2),
        ("label {packed} --panels 2 --start-at 12 --out a.pdf", 3),
        ("label {oil} --kind received --panels 2 --out a.pdf", 2),
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


@pytest.fixture
def two(shell: Shell) -> Shell:
    """Hand out a book with bottles of a second lot."""
    filled = shell.line("bottle {syrup} 1 x 40mL --bottles {bottles} --json")
    shell.codes["other"] = filled.json["code"]
    return shell


def test_bottles_of_several_lots_stand_on_one_used_sheet_and_all_are_recorded(two: Shell) -> None:
    """Seven of ten places are used up: the first sheet takes three more, the next one the rest."""
    assert two.line("label {other} --out one.pdf --count 2").exit_code == 0
    asked = "label {other} --also {packed} --count 2 --layout 2x5 --start-at 8 --out two.pdf"
    before, done = two.entries(), two.line(f'{asked} --because "the first got wet"')
    other = two.codes["other"]
    assert done.lines[:3] == [
        f"Recorded {before + 1}, labels {other}: 2 printed.",
        f"Recorded {before + 2}, labels BOS-001-S: 2 printed.",
        "The labels are in two.pdf.",
    ], done.err
    pages = texts_of(Path("two.pdf").read_bytes())
    assert [[page.count(f"Lot {code}") for code in (other, "BOS-001-S")] for page in pages] == [
        [2, 1],
        [0, 1],
    ]
    with pdfium.PdfDocument(Path("two.pdf")) as document:
        title = document.get_metadata_dict()["Title"]
    assert title == f"Labels {other}, BOS-001-S"


def test_labels_of_several_lots_are_all_recorded_and_printed_or_none(two: Shell) -> None:
    """One of them is held, and nothing is said of why its labels are wanted."""
    two.line('hold {packed} --because "a ring"')
    before = two.entries()
    refused = two.line("label {other} --also {packed} --count 2 --out none.pdf")
    assert (refused.exit_code, two.entries()) == (4, before)
    assert not Path("none.pdf").exists()
    done = two.line('label {other} --also {packed} --count 2 --out b.pdf --because "shelf" --json')
    assert (done.json["code"], [each["code"] for each in done.json["also"]]) == (
        two.codes["other"],
        ["BOS-001-S"],
    )
    done = two.line('label {other} --also {packed} --count 1 --out c.pdf --because "shelf"')
    assert "The labels are in c.pdf, BOS-001-S with HOLD across." in done.lines


@pytest.mark.parametrize(
    ("options", "code", "told", "todo"),
    [
        (
            "--also {other} --used 2 --gtin 9521234543213",
            2,
            "--used, --gtin can be said of one lot only, and several are to stand on the sheet.",
            "Leave them out, or --also.",
        ),
        (
            "--also {packed}",
            3,
            "BOS-001-S is named more than once for one sheet.",
            "Name each lot once, and say how many labels of each with --count.",
        ),
        (
            "--also {other} --count 6000",
            3,
            "12000 labels cannot be printed at once.",
            "Ask for 1 to 10000 labels.",
        ),
        (
            "--also NO-999-4",
            3,
            "There is no lot NO-999-4 in the book.",
            "pottle stock lists the lots that are.",
        ),
    ],
)
def test_what_several_lots_cannot_share_is_refused(
    two: Shell, options: str, code: int, told: str, todo: str
) -> None:
    before = two.entries()
    found = two.line(f"label {{packed}} {options} --out none.pdf")
    assert (found.exit_code, found.complaints) == (code, [told, f"  {todo}"])
    assert two.entries() == before
    assert not Path("none.pdf").exists()


def recorded(*told: tuple[int, str, int]) -> list[Any]:
    return [
        Mock(seq=seq, entry=Mock(facts=Mock(printed=printed), draft=Mock(lot=lot)))
        for seq, lot, printed in told
    ]


def test_where_a_sheet_fails_all_that_stands_in_the_book_is_told_with_how_to_print_again() -> None:
    one, two = (7, "A-1", 3), (8, "B-1", 2)
    assert [_what_is_recorded(recorded(*told)) for told in ([one], [one, two])] == [
        "Entry 7 is recorded: 3 labels of A-1 printed.",
        "Entry 7 is recorded: 3 labels of A-1 printed. Entry 8 is recorded: 2 labels of B-1 "
        "printed.",
    ]
    assert [_how_to_print_again(recorded(*told)) for told in ([one], [one, two])] == [
        "Strike it, and print again: pottle strike 7",
        "Strike them, and print again: pottle strike 7 and pottle strike 8",
    ]


def test_what_a_label_lacks_is_told_by_the_card_by_the_list_and_by_the_language(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    module = cli_screens_goods_label
    monkeypatch.setattr(module, "gap_lines", lambda told: [f"gap of {told}"])
    monkeypatch.setattr(
        module, "lacking_lines", lambda served, with_nutrition: [f"lacks {with_nutrition}"]
    )
    monkeypatch.setattr(module, "typed_list_lines", lambda *_: ["list"])
    monkeypatch.setattr(module, "unnamed_lines", lambda *told: [f"unnamed in {told[-1]}"])
    monkeypatch.setattr(module, "typed_lines", lambda language: [f"typed in {language}"])
    asked, found = module.Asked(nutrition=True, language="fr"), Mock()
    served = module._Made(found, Mock(declaration="card"), Mock())
    bare = module._Made(found, None, Mock())
    assert list(module._missing(served, asked)) == ["gap of card", "list", "unnamed in fr"]
    assert list(module._missing(bare, asked)) == ["list", "unnamed in fr"]
    rest = ["list", "unnamed in fr", "typed in fr"]
    assert list(module._lacking(served, asked)) == ["lacks True", *rest]
    assert list(module._lacking(bare, asked)) == rest


def test_what_finds_no_room_is_asked_of_the_layout_of_the_sheet_each_name_once(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def fitted(_label: object, layout: object) -> list[Any]:
        return [Mock(left_out=("seal", str(layout))), Mock(left_out=("seal",))]

    monkeypatch.setattr("reports.pdf.goods.label_panels.fit_panels", fitted)
    own, usual = shipped_layouts()["2x5"], shipped_layouts()[USUAL]
    module = cli_screens_goods_label
    assert module._left_out(Mock(), module.Asked(layout=own)) == ("seal", str(own))
    assert module._left_out(Mock(), module.Asked()) == ("seal", str(usual))


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("label")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("label", still)


@pytest.mark.parametrize("module", [cli_screens_goods_label, cli_screens_goods_tags])
def test_its_tables_figures_and_words_are_the_kept_ones(module: ModuleType) -> None:
    check_constants(module)


def test_of_each_lot_on_a_shelf_there_is_one_label_or_as_many_as_are_asked_for(
    shell: Shell, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = "label {oil} --kind received --also {spirit} --layout 2x5 --out"
    for told, each in (("", 1), ("--count 1", 1), ("--count 2", 2)):
        monkeypatch.setattr(cli_screens_goods_tags, "MOST", 2 * each)
        assert shell.line(f"{asked} a{each}{len(told)}.pdf {told}").exit_code == 0
        text = text_of(Path(f"a{each}{len(told)}.pdf").read_bytes())
        assert [text.count(f"Lot {code}\n") for code in ("SOO-001-3", "NS-001-J")] == [each] * 2
    for count, many in ((0, 0), (3, 6), (4, 8), (5, 5)):
        problem = (f"{many} labels cannot be printed at once.", "Ask for 1 to 4.")
        check_refused((f"{asked} b.pdf --count {count}", 3, problem), shell)
    assert not Path("b.pdf").exists()
