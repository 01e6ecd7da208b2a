from collections import Counter
from io import BytesIO

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from reportlab.lib.units import mm

from ledger.errors import RefusedError
from reports.pdf.goods.label import label_sheet
from reports.pdf.goods.label_block import LEAST, LEAST_PRODUCT, VOLUME
from reports.pdf.goods.label_fit import LABEL_HEIGHT, LABEL_WIDTH, PADDING, lay_label
from reports.pdf.kit.fonts import REGULAR, register
from reports.pdf.kit.marks import Symbol, Words
from reports.pdf.kit.text import CAP_HEIGHT, width_of
from reports.views.goods import LabelView
from tests.golden import check_golden
from tests.reports.pdf.examples import LABEL, SHEET
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
    seal = "\n".join(SHEET.seal)
    found = [Counter(symbols_of(image)) for image in images_of(pdf)]
    assert found == [Counter({"E26-014-7": n, seal: 1}) for n in on_each]
    texts = texts_of(pdf)
    assert [text.count("\nLot E26-014-7\n") for text in texts] == on_each
    numbers = [f"Page {n} of {len(on_each)}" for n in range(1, len(on_each) + 1)]
    assert [number in text for number, text in zip(numbers, texts, strict=True)] == [True] * len(
        on_each
    )
    assert all("\n".join(SHEET.seal) in text for text in texts)


def test_sixty_pages_of_labels_are_counted() -> None:
    texts = texts_of(printed(label_sheet, replace(SHEET, count=60 * 12)))
    assert len(texts) == 60
    assert "720 labels of lot E26-014-7" in texts[59]
    assert "Page 60 of 60" in texts[59]


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
        "Made\u00a0on\u00a02026-03-01",
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


def test_the_least_size_has_the_x_height_the_law_asks_for() -> None:
    """Regulation (EU) No 1169/2011, Article 13(2): at least 1.2 mm; x by its outline."""
    face = register()[REGULAR]
    offset = face.get_table_pos("glyf")[0] + face.glyphPos[face.charToGlyph[ord("x")]]
    face.seek(offset + 8)
    assert face.read_short() / face.unitsPerEm * LEAST / mm >= 1.2


def test_the_figures_of_the_volume_are_four_millimetres_high() -> None:
    """Directive 76/211/EEC, Annex I (from memory)."""
    assert VOLUME.size * CAP_HEIGHT / mm >= 4


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
    )
)
def test_a_label_fits_inside_its_margins_without_overlap_or_is_refused(label: LabelView) -> None:
    try:
        marks = lay_label(label)
    except RefusedError:
        return
    boxes = [_box(mark) for mark in marks if isinstance(mark, Words) and mark.text]
    for left, top, right, bottom in boxes:
        assert left >= PADDING - 0.01
        assert right <= LABEL_WIDTH - PADDING + 0.01
        assert top >= PADDING - 0.01
        assert bottom <= LABEL_HEIGHT - PADDING + 0.01
    (symbol,) = [mark for mark in marks if isinstance(mark, Symbol)]
    boxes.append((symbol.x, symbol.y - symbol.size, symbol.x + symbol.size, symbol.y))
    assert not any(_overlap(a, b) for n, a in enumerate(boxes) for b in boxes[:n])
    sizes = {mark.face.size for mark in marks if isinstance(mark, Words)}
    assert min(sizes) >= LEAST
    assert marks[0].face.size >= LEAST_PRODUCT if isinstance(marks[0], Words) else False


Box = tuple[float, float, float, float]


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


@pytest.mark.parametrize(
    ("label", "why"),
    [
        (
            replace(LABEL, product="W" * 40),
            "A word of the product is too wide even at 9 pt.",
        ),
        (
            replace(LABEL, product="W" * 40, house_address="m" * 60, volume="9" * 20),
            "A word of the product is too wide even at 9 pt. "
            "A word of the maker's address is too wide even at 6.5 pt. "
            "A word of the net volume is too wide at 16.5 pt.",
        ),
        (
            replace(LABEL, text="Shake well. " * 60),
            "At its least sizes, 9 pt for the product and 6.5 pt for the rest, it needs 53.9 mm "
            "of height inside its margins and has 38.0 mm.",
        ),
    ],
    ids=["long word", "all problems at once", "long text"],
)
def test_words_that_do_not_fit_are_refused_and_nothing_is_written(
    label: LabelView, why: str
) -> None:
    out = BytesIO()
    with pytest.raises(RefusedError) as raised:
        label_sheet(replace(SHEET, label=label), out)
    assert str(raised.value) == (
        f"The label of lot E26-014-7 does not fit 90 by 44 mm. {why} "
        "Shorten its names and texts and print again."
    )
    assert out.getvalue() == b""


def test_a_character_without_a_shape_stops_no_label() -> None:
    view = replace(SHEET, label=replace(LABEL, product="Lemon ☃"))
    assert "Lemon 2603" in text_of(printed(label_sheet, view)).replace("\n", "")


def test_a_seal_too_long_for_the_foot_is_refused() -> None:
    with pytest.raises(RefusedError) as raised:
        printed(label_sheet, replace(SHEET, seal=("word " * 400,)))
    assert str(raised.value).startswith("The foot of the page, with the seal, needs ")
