"""Code 128: whole dots of any printer, read back, refused where it has no room or no letters."""

from io import BytesIO

import pypdfium2 as pdfium  # type: ignore[import-untyped]
import pytest
import zxingcpp
from reportlab.lib.units import inch, mm
from reportlab.pdfgen.canvas import Canvas

from ledger.errors import RefusedError
from reports.pdf.kit.bars import draw_bars, module_for


@pytest.mark.parametrize("dpi", [203, 300, 600])
def test_bars_are_read_back_at_the_dots_they_are_made_for(dpi: int) -> None:
    module = module_for("SOO-004-Y", 60 * mm, dpi)
    assert module / (inch / dpi) == pytest.approx(round(module / (inch / dpi)))
    out = BytesIO()
    canvas = Canvas(out, pagesize=(70 * mm, 20 * mm), invariant=1)
    draw_bars(canvas, "SOO-004-Y", 2 * mm, 5 * mm, module, 8 * mm)
    canvas.save()
    with pdfium.PdfDocument(out.getvalue()) as document:
        image = document[0].render(scale=dpi / 72, grayscale=True).to_pil()
    assert [found.text for found in zxingcpp.read_barcodes(image)] == ["SOO-004-Y"]


def test_too_narrow_a_place_and_strange_letters_are_refused() -> None:
    with pytest.raises(RefusedError) as raised:
        module_for("SOO-004-Y", 20 * mm, 203)
    assert raised.value.what.startswith("The bar code of “SOO-004-Y” needs ")
    with pytest.raises(RefusedError) as raised:
        module_for("ЖЖЖ", 200 * mm, 300)
    assert raised.value.problems == (
        ("A bar code cannot say “ЖЖЖ”.", "It has letters of English, figures and signs."),
    )
