"""The batch sheet on paper: each row with its code and boxes, its number read back."""

import pytest
from msgspec.structs import replace
from reportlab.lib.units import mm

from ledger.domain.evidence.seals import in_symbol
from ledger.errors import RefusedError
from ledger.service.bench.draws import propose
from ledger.service.lots.dossier import dossier
from ledger.service.masters.material import materials
from reports.kit.boxed import noting_boxed
from reports.pdf.bench import sheet as module
from reports.pdf.bench.sheet import (
    BETWEEN,
    BLANKS_LEFT,
    BOX,
    TICK,
    WIDE,
    _places,
    batch_sheet,
    sections_of,
)
from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Box, Words
from reports.pdf.kit.page import SIDE, WIDTH
from reports.pdf.kit.styles import SMALL
from reports.pdf.kit.text import width_of
from reports.views import bench as bench_views
from reports.views.bench import BatchSheetView, SheetRow
from reports.words.bench.sheet import batch_sheet_view
from tests.keeper import Keeper
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import FRAME, SEAL
from tests.reports.pdf.ink import ink_of
from tests.reports.pdf.laid import NARROW, laid
from tests.reports.pdf.readback import (
    images_of,
    metadata_of,
    printed,
    symbols_of,
    text_of,
    texts_of,
)

DONE = ("day, time", "by", "checked")
ADDED = ("lot", "amount", "day, time", "weighed", "checked")
SHEET = BatchSheetView(
    frame=FRAME,
    number="LSE-014-7",
    title="Lemon soda essence",
    facts=(
        ("Formula", "lemon version 3"),
        ("Target", "1 L"),
        ("Yield", "85 % to 105 %"),
        ("Begun", "2026-03-01 09:30"),
        ("By", "AF"),
    ),
    rows=(
        SheetRow("A1", "Lemon oil", "29.1 mL to 30.9 mL; LO-003-K 30 mL", ADDED, "30 mL"),
        SheetRow("A2", "Ethanol", "ET-001-4 900 mL; short 50 mL", ADDED, "950 mL"),
        SheetRow("S1", "rest", "Macerate; at least 1 d", ("begun", "ended", "°C", "by", "checked")),
        SheetRow("S2a", "filter", "at most 25 µm, 2 passes or more", ("µm", "out mL", *DONE)),
        SheetRow("S2b", "filter", "pass 2", ("µm", "out mL", *DONE)),
        SheetRow("S3", "look", "clear or better", ("grade", "NTU", "°C", "age", *DONE)),
    ),
    cautions=("Highly flammable: keep away from flames and sparks.",),
    how_to_type="Typed in afterwards with --sheet LSE-014-7/CODE --at WHEN --by INITIALS.",
)


def test_the_sheet_reads_as_the_kept_one() -> None:
    check_golden("batch_sheet.txt", text_of(printed(batch_sheet, SHEET)))
    wide = SheetRow("S4", "bottle", "Fill them. " * 9, tuple(WIDE))
    low = SheetRow("S5", "add a thing with a long name " * 3, "", ("by",), "12 345.6 mL")
    whole = replace(SHEET, rows=(*SHEET.rows, wide, low), across="COPY")
    check_golden("ink/batch_sheet.txt", ink_of(printed(batch_sheet, whole)))


def test_the_same_view_gives_the_same_bytes() -> None:
    assert printed(batch_sheet, SHEET) == printed(batch_sheet, SHEET)


def test_the_number_is_read_back_from_the_symbol_at_the_head() -> None:
    (image,) = images_of(printed(batch_sheet, SHEET))
    assert sorted(symbols_of(image)) == sorted(["LSE-014-7", in_symbol(SEAL)])
    head = image.crop((0, 0, image.width, image.height // 4))
    assert symbols_of(head) == ["LSE-014-7"]


def test_the_metadata_name_the_sheet_and_the_maker() -> None:
    found = metadata_of(printed(batch_sheet, SHEET))
    assert (found["Title"], found["Author"]) == ("Batch sheet LSE-014-7", "Fennimore & Sloe")


def test_every_row_has_its_code_its_act_its_target_and_a_label_for_each_box() -> None:
    text = " ".join(text_of(printed(batch_sheet, SHEET)).split())
    for row in SHEET.rows:
        assert f" {row.code} {row.act} {row.target}".rstrip() in text
        assert f" {' '.join(row.blanks)} " in text


def test_boxes_are_high_enough_to_write_in_and_a_target_stands_out() -> None:
    register()
    (_, _, _, table, _) = sections_of(SHEET)
    marks = [mark for row in table.rows for mark in row.marks]
    boxes = [mark.height for mark in marks if isinstance(mark, Box)]
    assert set(boxes) == {TICK, BOX}
    assert (4 * mm, 9 * mm) == (TICK, BOX)
    (target,) = [mark for mark in marks if isinstance(mark, Words) and mark.text == "950 mL"]
    assert target.face.size == 14


def test_cautions_stand_above_all_that_is_done_and_a_copy_says_so() -> None:
    text = text_of(printed(batch_sheet, replace(SHEET, across="COPY")))
    assert text.index("Highly flammable") < text.index("A1")
    assert "COPY" in text
    assert "COPY" not in text_of(printed(batch_sheet, SHEET))


def test_a_sheet_without_a_formula_leaves_the_materials_open(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    lot = keeper.opens("start", product="Free", kind="blend", target="1L")
    view = batch_sheet_view(
        dossier(keeper.book, lot), propose(keeper.book, lot), materials(keeper.book)
    )
    text = " ".join(text_of(printed(batch_sheet, view)).split())
    assert text.count("what lot amount day, time by checked") == 6 + 3
    assert ("Formula none" in text, "Made by Date Checked by Date" in text) == (True, True)


def test_a_sheet_longer_than_a_page_repeats_its_head_and_numbers_every_page() -> None:
    rows = tuple(SheetRow(f"S{n}", "note", "", ("words", *DONE)) for n in range(1, 61))
    texts = texts_of(printed(batch_sheet, replace(SHEET, rows=rows)))
    assert len(texts) > 1
    assert all("in this order (continued)" in text for text in texts[1:-1])
    assert [f"Page {n} of {len(texts)}" in text for n, text in enumerate(texts, 1)] == [
        True for _ in texts
    ]
    assert "".join(texts).count("words day, time by checked") == 60


def test_the_signatures_bring_two_rows_along() -> None:
    rows = tuple(SheetRow(f"S{n}", "note", "", ("words", *DONE)) for n in range(1, 16))
    *_, last = texts_of(printed(batch_sheet, replace(SHEET, rows=rows)))
    assert [code in last for code in ("S12", "S14", "S15", "Made by")] == [False, True, True, True]


def test_a_box_is_as_wide_as_its_label() -> None:
    register()
    crowded = ("µm", "in mL", "out mL", "first mL", "°C", "kPa", "day, time", "by", "checked")
    for _, width, label in _places(crowded):
        assert width >= width_of(label, SMALL) + 1 * mm


@pytest.mark.parametrize("blanks", [("words",), ("lot", "amount", *DONE), ("µm",) * 8])
def test_blanks_share_the_room_and_do_not_meet(blanks: tuple[str, ...]) -> None:
    places = _places(blanks)
    assert [label for _, _, label in places] == list(blanks)
    assert places[0][0] == BLANKS_LEFT
    ends = [x + width for x, width, _ in places]
    assert ends[-1] == pytest.approx(WIDTH - SIDE)
    for end, (start, _, _) in zip(ends, places[1:], strict=False):
        assert start - end == pytest.approx(BETWEEN)


def test_a_delivery_has_no_sheet(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    lot = keeper.opens("receive", material="sugar", amount="1kg")
    with pytest.raises(RefusedError) as raised:
        batch_sheet_view(dossier(keeper.book, lot), (), ())
    assert raised.value.problems == (
        (
            f"{lot} is no batch, so there is no sheet to make it from.",
            "Name a lot that was begun with: pottle start ...",
        ),
    )


def test_a_character_without_a_shape_is_boxed_and_noted() -> None:
    with noting_boxed() as boxed:
        text = text_of(printed(batch_sheet, replace(SHEET, title="Lemon ✓")))
    assert boxed == {"✓"}
    assert "Lemon" in text


def test_every_mark_of_the_sheet_is_laid_out_as_it_was() -> None:
    """Rows with words, act or target alone, boxes few, many and too many, of each width."""
    register()
    long = "what is to be done in many words " * 3
    rows = (
        SheetRow("A1", "", "", ("by",)),
        SheetRow("A2", "", "", (), "12 345.6 mL"),
        SheetRow("A3", long, "", ("lot", "begun", "by")),
        SheetRow("A4", long, long, ("amount", "weighed", "waste mL"), "950 mL"),
        SheetRow("A5", "look", long * 3, ("µm", "in mL", "out mL", "first mL", "°C", *DONE)),
        SheetRow("A6", "bottle", "", ("count x size", "bottles lot", "caps lot", "work min")),
        SheetRow("A7", "all", "", (*WIDE, "words", "words", "lot", "lot")),
        SheetRow("A8", NARROW, NARROW, ("by",), "950 mL"),
        *(SheetRow("B", "one", "", (name, "amount")) for name in WIDE),
    )
    odd = replace(SHEET, rows=rows, facts=SHEET.facts[:3], cautions=("One.", "Two."))
    bare = replace(SHEET, rows=(), facts=(), cautions=(), how_to_type=long * 3 + NARROW)
    check_golden("laid/batch_sheet.txt", laid(*sections_of(odd), *sections_of(bare)))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


def test_what_is_not_told_on_it_is_the_kept_nothing() -> None:
    check_constants(bench_views)


@pytest.mark.parametrize(
    ("blanks", "room"),
    [(["temperature °C", "time", "by", "weighed"], 150.0), (["lot", "by"], 60.0), (["by"], 9.0)],
    ids=["one lacks", "none lacks", "too narrow"],
)
def test_boxes_share_their_room_out_whole_and_none_lacks_room_for_its_label(
    blanks: list[str], room: float
) -> None:
    widths = module._widths(blanks, room)
    assert sum(widths) == pytest.approx(room)
    least = [width_of(label, SMALL) + 2 * module.LABEL_PAD for label in blanks]
    fits = [width >= low for width, low in zip(widths, least, strict=True)]
    assert all(fits) is (sum(least) <= room)
