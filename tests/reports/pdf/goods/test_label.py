"""A sheet of labels on paper: each carries its lot, in words and as a symbol."""

from collections import Counter
from io import BytesIO

import pytest
from msgspec.structs import replace

from ledger.domain.evidence.seals import in_symbol
from ledger.errors import RefusedError
from reports.pdf.goods.label import label_sheet
from reports.pdf.goods.label_fit import lay_label
from reports.pdf.kit.marks import Words
from tests.golden import check_golden
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
        "Made on 2026-03-01",
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
