"""Layouts of labels: every shipped one stands inside its page; wrong ones are told all at once."""

from pathlib import Path

import pytest
from msgspec.structs import replace
from reportlab.lib.units import mm

from ledger.errors import InputError, RefusedError
from reports.pdf.goods import layouts as module
from reports.pdf.goods.layouts import (
    USUAL_ON,
    Layout,
    Plate,
    _faults,
    layout_called,
    read_layouts,
    shipped_layouts,
)
from tests.kept.golden import check_golden
from tests.kept.said import check_constants

WRONG = """
[[layout]]
name = "wide"
page = "A4"
across = 3
down = 2
width = 90.0
height = 44.0
dpi = 100
panels = 3

[[layout]]
name = "odd"
page = "A7"
across = 1
down = 1
width = 10.0
height = 10.0
"""
MEND = "Mend own.toml; pottle guide labels shows how a layout is written."


@pytest.mark.parametrize("layout", shipped_layouts().values(), ids=lambda each: each.name)
def test_every_label_of_a_shipped_layout_stands_inside_its_page(layout: Layout) -> None:
    wide, long = layout.page_points
    places = [layout.place(number) for number in range(layout.per_page)]
    assert len(set(places)) == layout.per_page
    for x, y in places:
        assert -0.01 <= x <= wide - layout.plate.width + 0.01
        assert -0.01 <= y <= long - layout.plate.height + 0.01


def test_a_layout_larger_than_its_page_and_all_else_that_is_wrong_is_told_at_once() -> None:
    with pytest.raises(InputError) as raised:
        read_layouts(WRONG, "own.toml")
    assert {todo for _, todo in raised.value.problems} == {MEND}
    assert [what for what, _ in raised.value.problems] == [
        "The layout wide has 3 panels a label; 1 may be, or 2 for front and back.",
        "The layout wide is for 100 dpi; printers have 203, 300 or 600.",
        "The layout wide is 270 mm wide, and its page 210 mm.",
        'The layout odd is on a page "A7"; it may be A4, Letter or [width, length].',
    ]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "own.toml holds no layout."),
        (
            "layout = 3",
            "own.toml holds no layouts that can be read: Expected `array`, got `int`.",
        ),
        (
            "[[layout]]\nname = 3",
            "own.toml holds no layouts that can be read: Expected `str`, got `int` - at "
            "`$[0].name`.",
        ),
        (
            "nonsense",
            "own.toml holds no layouts that can be read: Expected '=' after a key in a key/value "
            "pair (at end of document).",
        ),
    ],
)
def test_a_file_without_layouts_is_refused(text: str, told: str) -> None:
    with pytest.raises(InputError) as raised:
        read_layouts(text, "own.toml")
    assert raised.value.problems == ((told, MEND),)


def test_a_layout_is_called_by_its_name_or_the_names_are_told() -> None:
    known = shipped_layouts()
    assert layout_called("3x7", known).per_page == 21
    with pytest.raises(RefusedError) as raised:
        layout_called("9x9", known)
    assert raised.value.todo.startswith("Give one of: 2x6, 2x5, 2x4")


def test_a_small_label_has_a_narrower_margin_and_symbol() -> None:
    small = shipped_layouts()["50x25"].plate
    assert (small.padding, small.dpi) == (2 * mm, 203)
    assert small.symbol < small.height / 2


def test_the_layout_that_the_guide_shows_can_be_read() -> None:
    guide = (Path(__file__).parents[4] / "cli" / "guide" / "labels.md").read_text(encoding="utf-8")
    shown = guide.partition("```toml\n")[2].partition("```")[0]
    (layout,) = read_layouts(shown, "own.toml").values()
    assert (layout.name, layout.dpi, layout.panels, layout.per_page) == ("shelf", 203, 1, 1)


def test_from_35_mm_on_a_label_has_a_margin_of_3_mm_and_below_of_2() -> None:
    for height_mm, margin_mm in ((35.0, 3), (34.9, 2)):
        plate = Plate(60 * mm, height_mm * mm)
        assert plate.padding == pytest.approx(margin_mm * mm)
        assert plate.inner == pytest.approx((60 - 2 * margin_mm) * mm)
        assert plate.room == pytest.approx((height_mm - 2 * margin_mm) * mm)


def test_the_figures_of_every_shipped_layout_are_as_kept() -> None:
    told = []
    for layout in shipped_layouts().values():
        plate = layout.plate
        figures = (*layout.page_points, layout.below, plate.width, plate.height, plate.symbol)
        inside = (plate.padding, plate.inner, plate.room)
        told.append(str(layout))
        told.append(" ".join(f"{figure:.2f}" for figure in (*figures, *inside)) + f" {plate.size}")
        places = [layout.place(number) for number in range(layout.per_page)]
        told += [f"{x:.2f} {y:.2f}" for x, y in places]
    check_golden("laid/layouts.txt", "\n".join(told) + "\n")


def test_each_sheet_that_a_house_prints_on_has_its_usual_layout() -> None:
    known = shipped_layouts()
    assert USUAL_ON == {"A4": "2x6", "Letter": "letter-2x5"}
    assert {page: known[name].page for page, name in USUAL_ON.items()} == {
        "A4": "A4",
        "Letter": "Letter",
    }
    assert Plate(1.0, 1.0).dpi == known["2x6"].dpi == 300


def test_what_is_wrong_with_a_layout_is_told_from_its_bounds_on() -> None:
    """Each just within and just past its bound."""
    plain = Layout("own", (100.0, 100.0), 1, 1, 100.0, 100.0)
    told = []
    for change in (
        {},
        {"across": 0},
        {"down": 0},
        {"across": 1000, "width": 0.1},
        {"across": 1001, "width": 0.01},
        {"panels": 0},
        {"panels": 2},
        {"dpi": 203},
        {"dpi": 299},
        {"width": 0.0},
        {"height": -1.0},
        {"left": -0.1},
        {"top": -0.1},
        {"gap": (-0.1, 0.0)},
        {"gap": (0.0, -0.1)},
        {"page": (2000.0, 100.0)},
        {"page": (100.0, 2000.1)},
        {"page": "A5"},
        {"page": "Letter"},
        {"left": 0.01},
        {"top": 0.01},
        {"across": 2, "width": 45.0, "gap": (10.1, 0.0)},
        {"across": 2, "width": 45.0, "gap": (10.0, 0.0)},
        {"down": 2, "height": 45.0, "gap": (0.0, 10.1)},
        {"down": 2, "height": 45.0, "gap": (0.0, 10.0)},
        {"width": 100.1, "height": 100.1, "dpi": 1, "panels": 9},
    ):
        faults = list(_faults(replace(plain, **change)))
        told.append(f"{change}: {' '.join(faults) or 'nothing'}")
    check_golden("laid/layouts_wrong.txt", "\n".join(told) + "\n")


def test_labels_stand_in_rows_with_the_gaps_between_them() -> None:
    plain = shipped_layouts()["2x5"]
    sheet = replace(
        plain, page=(100.0, 200.0), across=2, down=3, width=30.0, height=20.0, left=5.0, top=7.0,
        gap=(4.0, 3.0),
    )  # fmt: skip
    corners = [(x / mm, y / mm) for x, y in map(sheet.place, range(6))]
    wanted = [(x, 200 - y) for y in (27, 50, 73) for x in (5, 39)]
    assert [x for x, _ in corners] == pytest.approx([x for x, _ in wanted])
    assert [y for _, y in corners] == pytest.approx([y for _, y in wanted])


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
