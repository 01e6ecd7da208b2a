"""Labels for shelf, bench and carton: read back by a scanner, inside their margins, or refused."""

from io import BytesIO

import pytest
import zxingcpp
from msgspec.structs import replace
from reportlab.lib.units import mm

from ledger.errors import RefusedError
from reports.pdf.goods import tag as module
from reports.pdf.goods.label import write_labels
from reports.pdf.goods.layouts import Plate, shipped_layouts
from reports.pdf.goods.tag import lay_tag
from reports.pdf.kit.marks import Bars, Patch, Words
from reports.views.goods import TagView
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import FRAME
from tests.reports.pdf.ink import ink_of
from tests.reports.pdf.laid import NARROW, marked
from tests.reports.pdf.readback import images_of

GS1 = "\xf10109521234543213" + "15261228" + "10BOS-001-S"
UNDER = "(01)09521234543213(15)261228(10)BOS-001-S"
TAG = TagView(
    "Orange syrup, 250 mL",
    "BOS-001-S",
    rows=(("Best before", "2026-12-28"),),
    blanks=("How many",),
    symbol="BOS-001-S",
    bars="BOS-001-S",
)


def drawn(tag: TagView, layout: str) -> bytes:
    out, chosen = BytesIO(), shipped_layouts()[layout]
    write_labels(out, FRAME, "Labels", "Labels", [((lay_tag(tag, chosen.plate),), 1)], chosen)
    return out.getvalue()


KINDS = {
    "whole": TAG,
    "case": replace(TAG, symbol="", bars=GS1, under="(01) 09521234543213", blanks=()),
    "flammable": TagView(
        "Orange essence",
        "OE-001-5",
        "FLAMMABLE",
        rows=(("Strength", "78 % vol"), ("Made", "2026-03-01")),
        has_flame=True,
        statements=("Highly flammable liquid and vapour.", "Keep away from heat and sparks."),
    ),
    "held": TagView("Orange syrup", "BOS-001-S", "HOLD", blanks=("Why", "By"), is_barred=True),
    "narrow": TagView(
        NARROW[:90], "BOS-001-S", rows=((NARROW[:40], NARROW[:200]),), symbol="B", under=NARROW[:90]
    ),
    "vessel": TagView("Demijohn 2", "", rows=(("Holds", "5 L"),), symbol="V2", blanks=("Since",)),
}


@pytest.mark.parametrize("layout", shipped_layouts())
def test_every_mark_of_a_label_for_the_shelf_stands_where_it_stood(layout: str) -> None:
    told = []
    for name, tag in KINDS.items():
        try:
            told.append(f"{name}\n{ink_of(drawn(tag, layout))}")
        except RefusedError as error:
            told.append(f"{name}\n{error}\n")
    check_golden(f"ink/tag_{layout}.txt", "".join(told))


@pytest.mark.parametrize("layout", ["100x50", "3x7", "2x5"])
def test_the_code_is_read_from_symbol_and_bars_alike(layout: str) -> None:
    (image,) = images_of(drawn(TAG, layout))
    told = {(str(found.format), found.text) for found in zxingcpp.read_barcodes(image)}
    assert {text for _, text in told if text == "BOS-001-S"} == {"BOS-001-S"}
    assert len([1 for form, text in told if text == "BOS-001-S"]) == 2


def test_a_case_is_read_as_gs1() -> None:
    """GS1 General Specifications: symbology identifier ]C1 before a GS1-128."""
    (image,) = images_of(drawn(replace(TAG, symbol="", bars=GS1), "100x50"))
    (found,) = zxingcpp.read_barcodes(image)
    assert found.symbology_identifier == "]C1"
    assert found.text.replace("\x1d", "") in (GS1[1:], "(01)09521234543213(15)261228(10)BOS-001-S")


def test_what_bars_a_lot_has_a_border_of_diagonals_and_a_word_seen_from_afar() -> None:
    held = TagView("Orange syrup", "BOS-001-S", "HOLD", blanks=("Why",), is_barred=True)
    marks = lay_tag(held, shipped_layouts()["100x50"].plate)
    assert len([mark for mark in marks if isinstance(mark, Patch)]) > 20
    (word,) = [mark for mark in marks if isinstance(mark, Words) and mark.text == "HOLD"]
    assert word.face.size >= 28


def test_what_does_not_fit_says_what_it_lacks() -> None:
    with pytest.raises(RefusedError) as raised:
        lay_tag(replace(TAG, blanks=("a",) * 9), shipped_layouts()["50x25"].plate)
    assert raised.value.what.startswith(
        "The label of BOS-001-S does not fit 50 by 25 mm: it lacks "
    )
    assert raised.value.todo.startswith("It fits with --layout ")
    for name in raised.value.todo.removeprefix("It fits with --layout ")[:-1].split(" or "):
        assert lay_tag(replace(TAG, blanks=("a",) * 9), shipped_layouts()[name].plate)
    with pytest.raises(RefusedError) as raised:
        lay_tag(replace(TAG, blanks=("a",) * 99), shipped_layouts()["50x25"].plate)
    assert raised.value.todo == "Give a larger one with --layouts FILE."


def test_the_bars_stand_at_the_foot_as_high_as_there_is_room() -> None:
    """A case with a symbol of GS1 has bars of 31.75 mm where it can (GS1 Gen. Specs, 5.5)."""
    small, large = shipped_layouts()["100x50"].plate, Plate(100 * mm, 80 * mm, 203)
    for plate, least in ((small, 10 * mm), (large, 31.75 * mm)):
        marks = lay_tag(replace(TAG, symbol="", bars=GS1, under=UNDER), plate)
        (bars,) = [mark for mark in marks if isinstance(mark, Bars)]
        (under,) = [mark for mark in marks if isinstance(mark, Words) and mark.text == UNDER]
        assert bars.height >= least
        assert bars.y < under.y <= plate.height - plate.padding


@pytest.mark.parametrize("name", KINDS)
def test_every_mark_of_a_label_for_the_shelf_is_laid_out_as_it_was(name: str) -> None:
    """On plates from narrow and low to wide and high, so that each scale and limit is reached."""
    told = []
    for wide, high in ((40, 30), (62, 44), (80, 44), (100, 50), (100, 150), (200, 90)):
        plate = Plate(wide * mm, high * mm, 203)
        try:
            told.append(f"{plate.size}\n{marked(lay_tag(KINDS[name], plate))}")
        except RefusedError as error:
            told.append(f"{plate.size}\n{error}\n")
    check_golden(f"laid/tag_{name}.txt", "".join(told))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
