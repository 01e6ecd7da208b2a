"""Every kind of symbol that is printed, at the dots of every printer, and on a second photocopy."""

from collections.abc import Iterator
from io import BytesIO

import pypdfium2 as pdfium  # type: ignore[import-untyped]
import pytest
import zxingcpp
from msgspec.structs import replace
from PIL import Image, ImageOps

from ledger.domain.evidence.seals import in_symbol
from reports.kit.frame import Heading
from reports.pdf.goods.label import label_sheet, with_panels, write_labels
from reports.pdf.goods.layouts import Layout, shipped_layouts
from reports.pdf.goods.tag import lay_tag
from reports.pdf.kit.head import paper_head
from reports.pdf.kit.page import write_paper
from reports.views.goods import LabelView, TagView
from tests.reports.pdf.examples import FRAME, LABEL, SHEET
from tests.reports.pdf.readback import photocopy

LOT = "E26-014-7"
LINK = f"https://id.gs1.org/01/09521234543213/10/{LOT}?15=270301"
GS1 = f"01095212345432131527030110{LOT}"
TAG = TagView("Lemon oil", LOT, symbol=LOT, bars=LOT)
BARE = replace(LABEL, is_small=True, cautions=(), text=None, dilution=None)
COPIED_AT = 600
"""Dots an inch at which an office machine copies (common practice, no source)."""
MARGIN_MM, BARS_MM, WHITE_MM = 2.0, 5.0, 6.0
"""What is copied around a symbol, of the height of bars, and of white paper around both."""


def label(view: LabelView, layout: Layout) -> bytes:
    out = BytesIO()
    label_sheet(replace(SHEET, label=view, count=1), out, layout)
    return out.getvalue()


def tag(view: TagView, layout: Layout) -> bytes:
    out = BytesIO()
    write_labels(out, FRAME, "Labels", "Labels", [((lay_tag(view, layout.plate),), 1)], layout)
    return out.getvalue()


def record() -> bytes:
    out, heading = BytesIO(), Heading("Batch record", LOT, symbol=LOT)
    write_paper(out, FRAME, heading, [paper_head(FRAME, heading)])
    return out.getvalue()


def paper(kind: str, dpi: int) -> tuple[bytes, set[str]]:
    """Print a paper for a printer; return it with what its symbols say."""
    roll = replace(shipped_layouts()["100x50"], dpi=dpi)
    small = replace(shipped_layouts()["50x25"], dpi=dpi)
    lot = f"]Q1 {LOT}"
    match kind:
        case "lot":
            return label(LABEL, roll), {lot}
        case "lot on a small label":
            return label(BARE, small), {lot}
        case "lot on a back":
            return label(LABEL, with_panels(roll, 2)), {lot}
        case "Digital Link":
            return label(replace(LABEL, symbol=LINK), roll), {f"]Q1 {LINK}"}
        case "received":
            return tag(TAG, roll), {lot, f"]C0 {LOT}"}
        case "case":
            return tag(replace(TAG, symbol="", bars=f"\xf1{GS1}"), roll), {f"]C1 {GS1}"}
    return record(), {lot, f"]Q1 {in_symbol(FRAME.seal)}"}


def scanned(pdf: bytes, dpi: int) -> Iterator[Image.Image]:
    """Print each page at some dots an inch; of a sheet its two corners with symbols."""
    with pdfium.PdfDocument(pdf) as document:
        for page in document:
            wide, high = page.get_size()
            below, above = (high - 144, 144) if high > 360 else (0, 0)
            left = wide - 144 if high > 360 else 0
            for crop in {(left, 0, 0, above), (left, below, 0, 0)}:
                yield page.render(scale=dpi / 72, grayscale=True, crop=crop).to_pil()


def read(image: Image.Image) -> dict[str, Image.Image]:
    """Read all symbols of a picture, each with the part of the picture that it is on."""
    return {
        f"{found.symbology_identifier} {found.text}".replace("\x1d", ""): cut(image, found)
        for found in zxingcpp.read_barcodes(image, text_mode=zxingcpp.TextMode.Plain)
    }


def cut(image: Image.Image, found: zxingcpp.Barcode) -> Image.Image:
    place, per_mm = found.position, image.info["dpi"] / 25.4
    corners = (place.top_left, place.top_right, place.bottom_left, place.bottom_right)
    left, right = min(at.x for at in corners), max(at.x for at in corners)
    top, bottom = min(at.y for at in corners), max(at.y for at in corners)
    if "C" in found.symbology_identifier:
        top = bottom = (top + bottom) // 2
    beside = round((BARS_MM if top == bottom else MARGIN_MM) * per_mm)
    return image.crop((left - beside, top - beside, right + beside, bottom + beside))


@pytest.mark.parametrize("dpi", [203, 300, 600])
@pytest.mark.parametrize(
    "kind",
    [
        *("lot", "lot on a small label", "lot on a back", "Digital Link"),
        *("received", "case", "record"),
    ],
)
def test_every_symbol_is_read_as_printed_and_from_a_copy_of_a_copy(kind: str, dpi: int) -> None:
    """Read by zxing-cpp; GS1-128 has symbology identifier ]C1 (GS1 General Specifications)."""
    pdf, wanted = paper(kind, dpi)
    parts: dict[str, Image.Image] = {}
    for image in scanned(pdf, dpi):
        image.info["dpi"] = dpi
        parts |= read(image)
    assert set(parts) == wanted
    for said, part in parts.items():
        size = round(COPIED_AT / dpi)
        seen = part.resize((part.width * size, part.height * size), Image.Resampling.NEAREST)
        seen = ImageOps.expand(seen, round(WHITE_MM * COPIED_AT / 25.4), 255)
        copied = photocopy(photocopy(seen, dpi), dpi + 1)
        copied.info["dpi"] = COPIED_AT
        assert said in read(copied)
