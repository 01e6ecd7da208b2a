"""Code 128: whole dots of any printer, read back, refused where it has no room or no letters."""

from io import BytesIO

import pypdfium2 as pdfium  # type: ignore[import-untyped]
import pytest
import zxingcpp
from reportlab.lib.units import inch, mm
from reportlab.pdfgen.canvas import Canvas

from ledger.errors import RefusedError
from reports.pdf.kit import bars as looked_at
from reports.pdf.kit.bars import FNC1, draw_bars, module_for, modules_of
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.ink import ink_of


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


def test_how_wide_bars_are_is_as_kept() -> None:
    """At each printer in places from too narrow to wider than they ever take; or why not."""
    told = []
    for text in ("SOO-004-Y", "123456", f"{FNC1}10LOT-1", FNC1, "", "a\x07"):
        try:
            told.append(f"{text!r}: {modules_of(text)} modules")
            for dpi in (203, 300):
                for width in (10, 19, 30, 45, 62, 400):
                    told.append(f"  {width} mm at {dpi} dpi: {_module(text, width, dpi)}")
        except RefusedError as error:
            told.append(f"{text!r}: {error}")
    check_golden("laid/bars.txt", "\n".join(told) + "\n")


def _module(text: str, width_mm: float, dpi: int) -> str:
    try:
        return f"{module_for(text, width_mm * mm, dpi):.4f}"
    except RefusedError as error:
        return str(error)


def test_bars_fit_a_place_that_is_exactly_as_wide_as_they_are() -> None:
    """Two dots a module and ten modules of quiet zone on either side."""
    wide = (modules_of("SOO-004-Y") + 20) * 2 * inch / 300
    assert module_for("SOO-004-Y", wide, 300) == pytest.approx(2 * inch / 300)
    with pytest.raises(RefusedError):
        module_for("SOO-004-Y", wide - 0.01, 300)


def test_every_bar_stands_where_it_stood() -> None:
    out = BytesIO()
    canvas = Canvas(out, pagesize=(200, 60), invariant=1)
    draw_bars(canvas, "SOO-004-Y", 10, 20, 0.72, 30)
    canvas.setProducer("Invented")
    canvas.save()
    check_golden("ink/bars.txt", ink_of(out.getvalue()))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(looked_at)
