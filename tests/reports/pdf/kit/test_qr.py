from io import BytesIO

import pypdfium2 as pdfium  # type: ignore[import-untyped]
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import ImageOps
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ledger.domain.evidence.seals import Seal, in_symbol
from ledger.errors import RefusedError
from reports.pdf.kit import qr as module
from reports.pdf.kit.qr import LONG, _module_dots, _runs, draw_qr
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.ink import ink_of
from tests.reports.pdf.readback import images_of, photocopy, symbols_of


def _drawn(text: str, size_mm: float) -> bytes:
    out = BytesIO()
    canvas = Canvas(out, pagesize=(40 * mm, 40 * mm), invariant=1)
    draw_qr(canvas, text, 5, 5, size_mm)
    canvas.save()
    return out.getvalue()


@pytest.mark.parametrize("size_mm", [4.92, 8, 16, 28])
def test_a_lot_code_is_read_back_at_any_size_from_two_dots_a_module(size_mm: float) -> None:
    assert symbols_of(images_of(_drawn("E26-014-7", size_mm))[0]) == ["E26-014-7"]


@given(st.text("ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-", min_size=1, max_size=20))
def test_every_code_of_the_book_fits_a_label_and_is_read_back(code: str) -> None:
    assert symbols_of(images_of(_drawn(code, 17))[0]) == [code]


@pytest.mark.parametrize(("size_mm", "dots"), [(5, 2), (8, 3), (17, 6)])
def test_a_module_is_a_whole_number_of_dots_and_the_quiet_zone_is_four(
    size_mm: float, dots: int
) -> None:
    """A symbol of 21 modules; its outer finder pattern is seven modules wide."""
    image = ImageOps.invert(images_of(_drawn("E26-014-7", size_mm))[0])
    ink = image.point([0] * 128 + [255] * 128)
    left, top, right, bottom = ink.getbbox() or (0, 0, 0, 0)
    assert (right - left, bottom - top) == (21 * dots, 21 * dots)
    finder = [ink.getpixel((x, top + dots // 2)) for x in range(left, left + 8 * dots)]
    assert finder == [255] * 7 * dots + [0] * dots
    assert left - 5 / 25.4 * 300 >= 4 * dots - 1


def test_a_square_too_small_is_refused_with_the_size_it_needs() -> None:
    with pytest.raises(RefusedError) as raised:
        _drawn("E26-014-7", 4.5)
    assert str(raised.value) == (
        "The QR symbol of “E26-014-7” needs a square of 4.9 mm to be readable and has 4.5 mm. "
        "Shorten the code and print again."
    )


def test_an_empty_text_is_refused() -> None:
    with pytest.raises(RefusedError) as raised:
        _drawn("", 16)
    assert str(raised.value) == "A QR symbol needs a text and got none. Give the lot's code."


def test_a_seal_is_read_from_the_second_photocopy_of_a_photocopy() -> None:
    """Modules of 0.42 mm on 18 mm; those of 0.25 mm, as the three lines stand, are gone."""
    seal = Seal("Notreal Fountain Works", 872, "4e11d266f9f7be9a5278deecf79df99f" * 2)
    out = BytesIO()
    canvas = Canvas(out, pagesize=(40 * mm, 40 * mm), invariant=1)
    draw_qr(canvas, in_symbol(seal.lines), 5, 5, 18, 5)
    canvas.save()
    (image,) = images_of(out.getvalue())
    copies = [photocopy(photocopy(image, seed), seed + 1) for seed in range(4)]
    assert [symbols_of(copied) for copied in copies] == [[in_symbol(seal.lines)]] * 4


@pytest.mark.parametrize("dpi", [203, 300, 600])
def test_a_symbol_takes_whole_dots_of_any_printer_and_is_read_at_them(dpi: int) -> None:
    out = BytesIO()
    canvas = Canvas(out, pagesize=(30 * mm, 30 * mm), invariant=1)
    draw_qr(canvas, "SOO-004-Y", 5, 5, 12, 2, dpi)
    canvas.save()
    with pdfium.PdfDocument(out.getvalue()) as document:
        image = document[0].render(scale=dpi / 72, grayscale=True).to_pil()
    assert symbols_of(image) == ["SOO-004-Y"]


def test_the_runs_of_a_row_are_its_dark_modules() -> None:
    assert list(_runs(bytearray([1, 1, 0, 1, 0, 0, 1, 1, 1]))) == [(0, 2), (3, 1), (6, 3)]
    assert list(_runs(bytearray([0, 0, 1]))) == [(2, 1)]
    assert list(_runs(bytearray([0]))) == []


def test_a_module_has_as_many_dots_as_fit_and_no_fewer_than_the_least() -> None:
    """29 modules of a dot of 300 dpi are 2.455 mm."""
    inch_mm = 25.4
    for dots in (2, 3, 7):
        side = 29 * dots * inch_mm / 300
        assert _module_dots(29, "A", side, 2, 300) == dots
        if dots > 2:
            assert _module_dots(29, "A", side - 0.001, 2, 300) == dots - 1
    with pytest.raises(RefusedError) as raised:
        _module_dots(29, "A", 29 * 5 * inch_mm / 203 - 0.001, 5, 203)
    assert raised.value.what == (
        "The QR symbol of “A” needs a square of 18.1 mm to be readable and has 18.1 mm."
    )


def test_a_symbol_is_drawn_where_and_as_it_was() -> None:
    """A short text, and one on each side of what is long, which differ in their level."""
    told = []
    for text, size_mm in (("E26-014-7", 8), ("A" * LONG, 17), ("A" * (LONG + 1), 17)):
        out = BytesIO()
        canvas = Canvas(out, pagesize=(40 * mm, 40 * mm), invariant=1)
        draw_qr(canvas, text, 5, 6, size_mm)
        draw_qr(canvas, text, 5, 20, size_mm)
        canvas.save()
        told.append(f"{text}\n{ink_of(out.getvalue()).partition('page 1')[2]}")
    check_golden("ink/qr.txt", "".join(told))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
