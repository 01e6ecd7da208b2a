"""A label in two panels: what stands on the front, what on the back, and what holds it."""

from io import BytesIO

import pytest
from msgspec.structs import replace

from ledger.errors import RefusedError
from reports.pdf.goods import label_panels as module
from reports.pdf.goods.label import label_sheet, with_panels
from reports.pdf.goods.label_block import LARGEST_NAME, NAME
from reports.pdf.goods.label_fit import holds
from reports.pdf.goods.label_panels import fit_panels, layouts_that_hold, panels_of
from reports.pdf.goods.layouts import Layout, shipped_layouts
from reports.pdf.kit.marks import Symbol, Words
from reports.views.goods import Declared, LabelView
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import LABEL, SHEET
from tests.reports.pdf.readback import images_of, symbols_of, texts_of

LISTED = Declared("the list", "Ingredients: sugar, water, MILK.")
FULL = replace(
    LABEL,
    strength="alc. 2.6 % vol",
    statements=("Contains quinine.",),
    declared=(LISTED, Declared("facts", "Nutrition, 100 mL as sold: energy 12 kJ")),
)


def two(name: str = "2x6") -> Layout:
    return with_panels(shipped_layouts()[name], 2)


def words_on(label: LabelView, layout: Layout) -> list[str]:
    return [
        " ".join(mark.text for mark in panel.marks if isinstance(mark, Words))
        for panel in fit_panels(label, layout)
    ]


def test_front_and_back_say_every_word_of_the_label_and_each_its_own() -> None:
    """Regulation (EU) No 1169/2011, Article 13(5), and 21 CFR 101.3 and 101.7 (label_law.csv)."""
    front, back = words_on(FULL, two("2x5"))
    for told in (FULL.strength, FULL.volume, FULL.house_name, FULL.house_address):
        assert told is not None
        assert (told in front, told in back) == (True, False), told
    behind = (
        *(f"Lot {FULL.lot}", FULL.made_on, FULL.best_before, FULL.dilution, FULL.text),
        *(*FULL.cautions, *FULL.statements, *(each.text for each in FULL.declared)),
    )
    for words in behind:
        assert words is not None
        assert (words in front, words in back) == (False, True), words
    assert FULL.product in front
    assert FULL.product in back


@pytest.mark.parametrize("layout", shipped_layouts().values(), ids=lambda each: each.name)
def test_the_name_on_a_front_has_16_to_24_points_and_the_volume_stands_lowest(
    layout: Layout,
) -> None:
    """21 CFR 101.7(e): the contents in the lowest 30 % of the panel (label_law.csv)."""
    label = replace(FULL, product="Lemon", volume="30 mL", is_small=True, figures_mm=2.0)
    front, back = panels_of(label, 2)
    assert holds(layout.plate, front)
    marks = fit_panels(replace(label, cautions=(), text=None, declared=()), with_panels(layout, 2))
    words = [mark for mark in marks[0].marks if isinstance(mark, Words)]
    assert words[0].text == "Lemon"
    assert NAME <= words[0].face.size <= LARGEST_NAME
    (volume,) = [mark for mark in words if mark.text == "30 mL"]
    assert volume.y - volume.face.size > 0.7 * layout.plate.height
    assert not any(isinstance(mark, Symbol) for mark in marks[0].marks)
    (symbol,) = [mark for mark in marks[1].marks if isinstance(mark, Symbol)]
    assert symbol.text == back.lot


@pytest.mark.parametrize("name", ["2x6", "letter-2x3", "100x50"])
def test_the_volume_stands_in_the_lowest_part_of_one_panel_too(name: str) -> None:
    """21 CFR 101.7(e): the contents in the lowest 30 % of the panel (label_law.csv)."""
    layout = shipped_layouts()[name]
    (whole,) = fit_panels(replace(LABEL, is_us=True, text=None, cautions=()), layout)
    words = [mark for mark in whole.marks if isinstance(mark, Words)]
    (volume,) = [mark for mark in words if mark.text == LABEL.volume]
    assert volume.y - 0.689 * volume.face.size > 0.7 * layout.plate.height


def test_the_panels_of_each_bottle_are_next_to_each_other_and_the_back_has_the_lots_symbol() -> (
    None
):
    out = BytesIO()
    label_sheet(replace(SHEET, label=FULL, count=7), out, two())
    texts = texts_of(out.getvalue())
    assert [text.count("250 mL") for text in texts] == [6, 1]
    assert [text.count(f"Lot {FULL.lot}\n") for text in texts] == [6, 1]
    assert "7 labels of lot E26-014-7, front and back, page 1 of 2" in texts[0]
    (first, _) = images_of(out.getvalue())
    assert symbols_of(first).count(FULL.lot) == 6
    half = first.crop((0, 0, first.width // 2, int(0.9 * first.height)))
    assert symbols_of(half) == []


def test_on_a_roll_the_back_follows_its_front() -> None:
    out = BytesIO()
    label_sheet(replace(SHEET, label=FULL, count=2), out, two("100x50"))
    has_lot = ["Lot E26-014-7" in text for text in texts_of(out.getvalue())]
    assert has_lot == [False, True, False, True]


def test_what_does_not_fit_in_one_panel_is_offered_two() -> None:
    """Here where they fit the layout, else where smaller labels than any of one panel hold it."""
    longer = replace(FULL, text="Shake well before use, and keep it cool. " * 4)
    todos = []
    for name in ("2x6", "50x25"):
        with pytest.raises(RefusedError) as raised:
            label_sheet(replace(SHEET, label=longer), BytesIO(), shipped_layouts()[name])
        todos.append(raised.value.todo)
    one = "It fits with --layout 100x50 or letter-2x5 or 2x5. As front and back it fits"
    mend = "Or shorten the names and texts that you typed, and print again."
    assert todos == [
        f"{one} this layout: --panels 2. {mend}",
        f"{one} with --panels 2 and --layout 2x6. {mend}",
    ]


def test_a_panel_that_does_not_fit_is_named_with_the_layouts_that_hold_it_either_way() -> None:
    longer = replace(FULL, text="Shake well before use, and keep it cool. " * 14)
    with pytest.raises(RefusedError) as raised:
        label_sheet(replace(SHEET, label=longer), BytesIO(), two())
    assert raised.value.what.startswith(
        "The back of the label of lot E26-014-7 does not fit 90 by 44 mm. At its least sizes, "
        "6.5 pt for the product and 6.5 pt for the rest, it lacks "
    )
    one, both = layouts_that_hold(longer), layouts_that_hold(longer, 2)
    assert raised.value.todo.startswith(
        f"It fits in one panel with --panels 1 and --layout {' or '.join(one[:3])}. "
        f"As front and back it fits with --panels 2 and --layout {both[0]}"
    )
    with pytest.raises(RefusedError) as raised:
        label_sheet(replace(SHEET, label=replace(FULL, product="W" * 30)), BytesIO(), two())
    assert raised.value.what == (
        "The front of the label of lot E26-014-7 does not fit 90 by 44 mm. "
        "A word of the product is too wide even at 16 pt."
    )


def test_what_each_panel_says_and_which_layouts_hold_it_are_as_kept() -> None:
    told = [*map(str, panels_of(FULL, 1)), *map(str, panels_of(FULL, 2))]
    told.append(str(panels_of(replace(FULL, figures_mm=2.0), 2)[0].figures_mm))
    told.append(f"whole: {', '.join(layouts_that_hold(FULL))}")
    longer = replace(FULL, text="Shake well before use, and keep it cool. " * 14)
    told += [f"longer: {', '.join(layouts_that_hold(longer, n))}" for n in (1, 2)]
    with pytest.raises(RefusedError) as raised:
        fit_panels(replace(longer, product="W" * 30), shipped_layouts()["2x5"])
    told.append(str(raised.value))
    check_golden("laid/label_panels.txt", "\n".join(told) + "\n")


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
