"""A label fits its margins without overlap, or is refused with all that is too long."""

import re
from io import BytesIO

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from reportlab.lib.units import mm

from ledger.errors import RefusedError
from reports.pdf.goods import label_fit as module
from reports.pdf.goods.label import label_sheet
from reports.pdf.goods.label_block import LEAST, LEAST_PRODUCT, LEAST_SMALL
from reports.pdf.goods.label_fit import USUAL_PLATE, fit_label, lay_label
from reports.pdf.goods.label_panels import layouts_that_hold
from reports.pdf.goods.layouts import Plate, shipped_layouts
from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Symbol, Words
from reports.pdf.kit.text import width_of
from reports.views.goods import Declared, LabelView, Panel
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import LABEL, SHEET
from tests.reports.pdf.laid import NARROW, marked

TEXTS = st.text(st.sampled_from("lemon &<b>Ω Ж ễ-"), max_size=160)


NAMES = TEXTS.filter(lambda text: bool(text.strip()))


@settings(max_examples=60, deadline=None)
@given(
    st.builds(
        LabelView,
        house_name=NAMES,
        house_address=st.none() | TEXTS,
        product=NAMES,
        lot=st.just("E26-014-7"),
        volume=st.sampled_from(["250 mL", "8.5 fl oz (250 mL)", "1 L"]),
        made_on=st.just("2026-03-01"),
        best_before=st.none() | st.just("2027-03-01"),
        dilution=st.none() | TEXTS,
        text=st.none() | TEXTS,
        cautions=st.lists(TEXTS, max_size=3).map(tuple),
        strength=st.none(),
        statements=st.just(()),
        declared=st.just(()),
        is_us=st.just(False),
        is_canadian=st.just(False),
        is_small=st.just(False),
        figures_mm=st.just(4.0),
        panel_sq_in=st.just(0.0),
        lot_word=st.just("Lot"),
    )
)
def test_a_label_fits_inside_its_margins_without_overlap_or_is_refused(label: LabelView) -> None:
    try:
        marks = lay_label(label)
    except RefusedError:
        return
    boxes = [_box(mark) for mark in marks if isinstance(mark, Words) and mark.text]
    for left, top, right, bottom in boxes:
        assert left >= USUAL_PLATE.padding - 0.01
        assert right <= USUAL_PLATE.width - USUAL_PLATE.padding + 0.01
        assert top >= USUAL_PLATE.padding - 0.01
        assert bottom <= USUAL_PLATE.height - USUAL_PLATE.padding + 0.01
    (symbol,) = [mark for mark in marks if isinstance(mark, Symbol)]
    boxes.append((symbol.x, symbol.y - symbol.size, symbol.x + symbol.size, symbol.y))
    assert not any(_overlap(a, b) for n, a in enumerate(boxes) for b in boxes[:n])
    sizes = {mark.face.size for mark in marks if isinstance(mark, Words)}
    assert min(sizes) >= LEAST
    assert marks[0].face.size >= LEAST_PRODUCT if isinstance(marks[0], Words) else False


Box = tuple[float, float, float, float]
LARGER = (
    "No layout that comes with pottle holds it: give a larger one with --layouts FILE. Or shorten "
    "the names and texts that you typed, and print again."
)
"""What is said where no layout holds a label."""


def _box(words: Words) -> Box:
    width = width_of(words.text, words.face)
    left = words.x - width if words.align == "right" else words.x
    top = words.y - words.face.drop
    return left, top, left + width, top + words.face.leading


def _overlap(a: Box, b: Box) -> bool:
    apart = 0.01
    return (
        a[0] < b[2] - apart and b[0] < a[2] - apart and a[1] < b[3] - apart and b[1] < a[3] - apart
    )


def test_what_is_declared_is_cut_before_a_label_is_refused() -> None:
    """The allergens stay, and so do the cautions."""
    list_ = Declared("the list of ingredients", "Sugar, water, milk. " * 60, "Contains: MILK.")
    fitted = fit_label(replace(LABEL, declared=(list_,)))
    assert fitted.left_out == ("the list of ingredients",)
    words = " ".join(mark.text for mark in fitted.marks if isinstance(mark, Words))
    assert "Contains: MILK." in words
    assert all(caution in words for caution in LABEL.cautions)
    assert "Sugar" not in words
    short = replace(list_, text="Sugar, water, milk.")
    assert fit_label(replace(LABEL, declared=(short,))).left_out == ()
    with pytest.raises(RefusedError):
        fit_label(replace(LABEL, text="Shake well. " * 60, declared=(short,)))


def test_a_list_that_may_not_be_cut_is_refused_with_what_it_lacks_and_what_holds_it() -> None:
    """Regulation (EU) No 1169/2011, Article 9(1)(b): the list stands on the label."""
    words = "Ingredients: sugar, water, alcohol, milk. " * 12
    listed = Declared("the list of ingredients", words, words)
    label = replace(LABEL, declared=(listed,), cautions=())
    with pytest.raises(RefusedError) as raised:
        label_sheet(replace(SHEET, label=label), BytesIO(), shipped_layouts()["3x7"])
    assert re.search(r"it lacks \d+\.\d mm of height; .* list of ingredients\.", raised.value.what)
    held = layouts_that_hold(label)
    assert raised.value.todo.startswith(f"It fits with --layout {held[0]}")
    endless = replace(label, text="Shake well. " * 400)
    with pytest.raises(RefusedError) as raised:
        label_sheet(replace(SHEET, label=endless), BytesIO())
    assert raised.value.todo == LARGER


def test_a_small_bottle_may_have_smaller_words_where_they_are_needed() -> None:
    many = replace(LABEL, cautions=("Never taste it neat. " * 22,))
    with pytest.raises(RefusedError):
        lay_label(many)
    sizes = {
        mark.face.size
        for mark in lay_label(replace(many, is_small=True))
        if isinstance(mark, Words)
    }
    # An x-height of 0.9 and of 1.2 mm: Regulation (EU) No 1169/2011, Article 13(2) and (3).
    assert (LEAST_SMALL, LEAST) == (4.9, 6.5)
    assert LEAST_SMALL <= min(sizes) < LEAST
    few = lay_label(replace(LABEL, is_small=True))
    assert min(mark.face.size for mark in few if isinstance(mark, Words)) >= LEAST


@pytest.mark.parametrize(
    ("label", "why", "todo"),
    [
        (
            replace(LABEL, product="W" * 40),
            "A word of the product is too wide even at 9 pt.",
            LARGER,
        ),
        (
            replace(LABEL, product="W" * 40, house_address="m" * 60, volume="9" * 20),
            "A word of the product is too wide even at 9 pt. "
            "A word of the maker's address is too wide even at 6.5 pt. "
            "A word of the net volume is too wide at 16.5 pt.",
            LARGER,
        ),
        (
            replace(LABEL, text="Shake well. " * 60),
            "At its least sizes, 9 pt for the product and 6.5 pt for the rest, it lacks 15.9 mm "
            "of height; what takes most of it: label text.",
            "It fits with --layout 2x5 or 2x4 or letter-2x3. As front and back it fits with "
            "--panels 2 and --layout 100x50 or letter-2x5. Or shorten the names and texts that "
            "you typed, and print again.",
        ),
    ],
    ids=["long word", "all problems at once", "long text"],
)
def test_words_that_do_not_fit_are_refused_and_nothing_is_written(
    label: LabelView, why: str, todo: str
) -> None:
    out = BytesIO()
    with pytest.raises(RefusedError) as raised:
        label_sheet(replace(SHEET, label=label), out)
    assert str(raised.value).startswith(
        f"The label of lot E26-014-7 does not fit 90 by 44 mm. {why}"
    )
    assert raised.value.todo == todo
    assert out.getvalue() == b""


def test_what_does_not_fit_names_the_layouts_that_hold_it_the_smallest_first() -> None:
    longer = replace(LABEL, text="Shake well before use, and keep it cool. " * 15)
    held = layouts_that_hold(longer)
    assert held
    assert "2x6" not in held
    with pytest.raises(RefusedError) as raised:
        label_sheet(replace(SHEET, label=longer), BytesIO())
    assert raised.value.todo == (
        f"It fits with --layout {' or '.join(held[:3])}. As front and back it fits with --panels 2 "
        "and --layout 100x50. Or shorten the names and texts that you typed, and print again."
    )
    label_sheet(replace(SHEET, label=longer), BytesIO(), shipped_layouts()[held[0]])


def test_every_mark_of_a_label_is_laid_out_as_it_was_on_plates_of_many_sizes() -> None:
    """Whole, bare, with a word across, of either panel; with names so long that all shrink."""
    register()
    bare = replace(
        LABEL, house_address=None, best_before=None, dilution=None, text=None, cautions=()
    )
    labels = {
        "whole": replace(LABEL, across="SPECIMEN", strength="alc. 2.6 % vol", symbol="SAID"),
        "bare": bare,
        "without a maker": replace(bare, house_name=" "),
        "large figures": replace(bare, figures_mm=9.0, volume="8.5 fl oz (250 mL) or a pint"),
        "small": replace(LABEL, is_small=True, figures_mm=2.0),
        "front": replace(bare, panel=Panel.FRONT, strength="alc. 2.6 % vol"),
        "back": replace(LABEL, panel=Panel.BACK),
        "of the United States": replace(LABEL, is_us=True),
        "narrow": replace(bare, product=NARROW[:70], text=NARROW[:250], volume=NARROW[:60]),
        "word too wide": replace(LABEL, product="W" * 40, house_name="m" * 60),
    }
    told = []
    for wide, high in ((90, 44), (60, 36), (100, 50), (50, 25)):
        plate = Plate(wide * mm, high * mm, 203)
        for name, label in labels.items():
            try:
                told.append(f"{name} on {plate.size}\n{marked(lay_label(label, plate))}")
            except RefusedError as error:
                told.append(f"{name} on {plate.size}\n{error}\n")
    check_golden("laid/label_fit.txt", "".join(told))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
