"""A sheet of labels on paper: each carries its lot, in words and as a symbol."""

from collections import Counter
from io import BytesIO
from types import SimpleNamespace
from typing import Any

import pytest
from msgspec.structs import replace
from reportlab.lib.units import mm

from ledger.domain.evidence.seals import in_symbol
from ledger.errors import InputError, RefusedError
from reports.pdf.goods import label as module
from reports.pdf.goods.label import (
    _below,
    _lay_marks,
    calibration,
    label_sheet,
    with_dpi,
    with_panels,
)
from reports.pdf.goods.label_fit import lay_label
from reports.pdf.goods.layouts import Layout, shipped_layouts
from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Words
from reports.pdf.kit.page import WIDTH
from reports.pdf.kit.styles import SMALL
from reports.views import goods as goods_views
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import FRAME, LABEL, SHEET
from tests.reports.pdf.readback import (
    images_of,
    metadata_of,
    printed,
    symbols_of,
    text_of,
    texts_of,
)


def test_the_sheet_reads_as_the_kept_one() -> None:
    check_golden("labels.txt", text_of(printed(label_sheet, replace(SHEET, count=2))))


def test_the_same_view_gives_the_same_bytes() -> None:
    assert printed(label_sheet, SHEET) == printed(label_sheet, SHEET)


@pytest.mark.parametrize(
    ("count", "on_each"),
    [
        (1, [1]),
        (12, [12]),
        (13, [12, 1]),
        (21, [12, 9]),
        (22, [12, 10]),
        (60, [12] * 5),
    ],
)
def test_every_label_carries_its_lot_in_words_and_as_a_symbol(
    count: int, on_each: list[int]
) -> None:
    pdf = printed(label_sheet, replace(SHEET, count=count))
    seal = in_symbol(SHEET.frame.seal)
    found = [Counter(symbols_of(image)) for image in images_of(pdf)]
    assert found == [Counter({"E26-014-7": n, seal: 1}) for n in on_each]
    texts = texts_of(pdf)
    assert [text.count("\nLot E26-014-7\n") for text in texts] == on_each
    numbers = [f"page {n} of {len(on_each)}" for n in range(1, len(on_each) + 1)]
    assert [number in text for number, text in zip(numbers, texts, strict=True)] == [True] * len(
        on_each
    )
    assert all("\n".join(SHEET.frame.seal) in text for text in texts)


def test_sixty_pages_of_labels_are_counted() -> None:
    texts = texts_of(printed(label_sheet, replace(SHEET, count=60 * 12)))
    assert len(texts) == 60
    assert "720 labels of lot E26-014-7" in texts[59]
    assert "page 60 of 60" in texts[59]


@pytest.mark.parametrize("count", [0, -3])
def test_fewer_than_one_label_is_refused(count: int) -> None:
    out = BytesIO()
    with pytest.raises(RefusedError) as raised:
        label_sheet(replace(SHEET, count=count), out)
    assert str(raised.value) == (
        f"A sheet needs at least 1 label and {count} were asked for. Say how many labels to print."
    )
    assert out.getvalue() == b""


def test_a_field_without_a_value_leaves_no_trace() -> None:
    bare = replace(
        LABEL, house_address=None, best_before=None, dilution=None, text=None, cautions=()
    )
    words = [mark.text for mark in lay_label(bare) if isinstance(mark, Words)]
    assert words == [
        "Lemon soda essence",
        "Lot E26-014-7",
        "made on 1 Mar 2026",
        "Fennimore & Sloe",
        "250 mL",
    ]


def test_scripts_and_markup_print_as_they_stand() -> None:
    product = "Ελληνικό & Тархун <b>[red]</b> Nước chanh"
    text = text_of(printed(label_sheet, replace(SHEET, label=replace(LABEL, product=product))))
    assert product in text.replace("\n", " ")


def test_the_metadata_name_the_lot_and_the_maker() -> None:
    found = metadata_of(printed(label_sheet, SHEET))
    assert (found["Title"], found["Author"]) == ("Labels E26-014-7", "Fennimore & Sloe")
    assert (found["Creator"], found["Producer"]) == ("Fennimore & Sloe", "Fennimore & Sloe")


def test_a_character_without_a_shape_stops_no_label() -> None:
    view = replace(SHEET, label=replace(LABEL, product="Lemon ☃"))
    assert "Lemon 2603" in text_of(printed(label_sheet, view)).replace("\n", "")


def test_a_seal_too_long_for_the_foot_is_refused() -> None:
    with pytest.raises(RefusedError) as raised:
        printed(label_sheet, replace(SHEET, frame=replace(FRAME, seal=("word " * 400,))))
    assert str(raised.value).startswith("The foot of the page, with the seal, needs ")


def test_labels_begin_where_a_used_sheet_is_free() -> None:
    """Three labels from the seventh of a sheet of eight places are on two sheets."""
    layout = replace(shipped_layouts()["2x6"], down=4)
    out = BytesIO()
    label_sheet(replace(SHEET, count=3), out, layout, start_at=7)
    texts = texts_of(out.getvalue())
    assert [text.count("Lot E26-014-7") for text in texts] == [2, 1]
    with pytest.raises(RefusedError) as raised:
        label_sheet(SHEET, BytesIO(), layout, start_at=9)
    assert str(raised.value) == (
        "A sheet of 2x6 has 8 labels, and no label 9. Give --start-at with 1 to 8."
    )


def test_marks_to_cut_along_stand_outside_the_trim() -> None:
    layout = shipped_layouts()["2x6"]
    (image,) = images_of(printed(label_sheet, replace(SHEET, count=1)))
    dots = 300 / 25.4
    left, top = layout.left + layout.width + 1, layout.top + 1
    right, below = layout.left + 2 * layout.width - 1, layout.top + 6 * layout.height - 1
    inside = image.crop((left * dots, top * dots, right * dots, below * dots))
    assert inside.getextrema() == (255, 255)
    above = image.crop((0, 0, image.width, int((layout.top - 0.5) * dots)))
    assert above.getextrema()[0] == 0


def test_ten_thousand_labels_hold_the_label_and_its_symbol_once() -> None:
    """A further label adds one reference to the form; the file stays small."""
    few = len(printed(label_sheet, replace(SHEET, count=12)))
    many = len(printed(label_sheet, replace(SHEET, count=1200)))
    assert many - few < 99 * 2_500


def test_a_sheet_to_calibrate_by_numbers_every_frame_and_says_how_long_its_line_is() -> None:
    out = BytesIO()
    calibration(FRAME, shipped_layouts()["3x7"], out)
    (text,) = texts_of(out.getvalue())
    assert "3x7: this line is 100 mm long; each frame is 63.5 by 38.1 mm" in text
    assert "21" in text.split()


def test_dots_and_panels_that_no_printer_and_no_label_has_are_refused() -> None:
    usual = shipped_layouts()["2x6"]
    assert (with_dpi(usual, None), with_panels(usual, None)) == (usual, usual)
    assert [with_dpi(usual, dpi).dpi for dpi in (203, 300, 600)] == [203, 300, 600]
    assert [with_panels(usual, panels).panels for panels in (1, 2)] == [1, 2]
    with pytest.raises(InputError) as raised:
        with_dpi(usual, 301)
    assert str(raised.value) == (
        "No printer of labels has 301 dpi. Give --dpi with 203, 300 or 600."
    )
    with pytest.raises(InputError) as raised:
        with_panels(usual, 3)
    assert str(raised.value) == (
        "A label has 1 panel or 2, not 3. Give --panels 1, or --panels 2 for front and back."
    )


@pytest.mark.parametrize(("across", "down"), [(1, 2), (2, 1)])
def test_marks_to_cut_a_single_column_or_row_apart_stand_at_its_own_edges(
    across: int, down: int
) -> None:
    """A tick of 2 mm, half a millimetre off every edge of a label of 40 by 30 mm from 10, 20 mm."""
    layout = Layout("one", (200, 100), across, down, 40, 30, 10, 20, cut=True)
    drawn: list[tuple[float, ...]] = []
    canvas: Any = SimpleNamespace(
        setLineWidth=lambda _: None,
        line=lambda *ends: drawn.append(tuple(round(end / mm, 3) for end in ends)),
    )
    _lay_marks(canvas, layout)
    columns = [10 + 40 * number for number in range(across + 1)]
    rows = sorted({100 - 20 - 30 * number for number in range(down + 1)})
    low, high, right = rows[0], rows[-1], columns[-1]
    upright = {(x, high + 0.5, x, high + 2.5) for x in columns}
    upright |= {(x, low - 0.5, x, low - 2.5) for x in columns}
    level = {(7.5, y, 9.5, y) for y in rows} | {(right + 0.5, y, right + 2.5, y) for y in rows}
    assert set(drawn) == upright | level


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


def test_what_is_not_told_on_it_is_the_kept_nothing() -> None:
    check_constants(goods_views)


@pytest.mark.parametrize(
    ("below", "width", "told"),
    [
        (26 * mm - 1, WIDTH, "the seal"),
        (26 * mm - 1.01, WIDTH, "a line"),
        (26 * mm + 40, WIDTH - 1, "nothing"),
        (7 * mm + SMALL.leading, WIDTH, "a line"),
        (7 * mm + SMALL.leading - 0.01, WIDTH, "nothing"),
        (7 * mm + SMALL.leading, WIDTH - 1, "nothing"),
        (26 * mm + 40, WIDTH + 90, "the seal"),
    ],
)
def test_below_labels_stands_as_much_of_the_seal_as_just_fits(
    below: float, width: float, told: str
) -> None:
    """A foot is 19 mm high and 7 mm from the edge, a point of which may be lost."""
    register()
    layout: Any = SimpleNamespace(below=below, page_points=(width, 800.0))
    strip = _below(FRAME, "2 labels", layout)
    words = [mark.text for mark in strip.marks if isinstance(mark, Words)]
    told_by = {
        (19 * mm, True): "the seal",
        (SMALL.leading, False): "a line",
        (0, False): "nothing",
    }
    assert told_by[strip.height, "\n".join(FRAME.seal) in "\n".join(words)] == told
    if told == "a line":
        assert words == [f"2 labels. {' '.join(FRAME.seal[1:])}"]
