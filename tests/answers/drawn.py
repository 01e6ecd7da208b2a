"""What stands on a paper and where: every line of words and every rule, with its place.

Guarantees: places are in points from the lower left corner of the page, to the hundredth, so that a
height or a column that is another shows as another line.
"""

import ctypes
from collections.abc import Iterator

import pypdfium2 as pdfium  # type: ignore[import-untyped]
from pypdfium2 import raw


def drawn(pdf: bytes) -> Iterator[str]:
    """Yield the lines and rules of every page, in the order in which they are drawn."""
    return (line for line, _ in marks(pdf))


def marks(pdf: bytes) -> Iterator[tuple[str, "pdfium.PdfObject | None"]]:
    """Yield a line for each page, of no mark, and for each mark on it, in their order."""
    with pdfium.PdfDocument(pdf) as document:
        for number, page in enumerate(document, 1):
            yield f"page {number}, {page.get_width():.2f} x {page.get_height():.2f}", None
            words = page.get_textpage()
            for mark in page.get_objects():
                if mark.type == raw.FPDF_PAGEOBJ_TEXT:
                    yield _words(mark, words), mark
                else:
                    yield "  " + " ".join(f"{edge:.2f}" for edge in mark.get_bounds()), mark


def _words(mark: "pdfium.PdfObject", page: "pdfium.PdfTextPage") -> str:
    length = raw.FPDFTextObj_GetText(mark, page, None, 0)
    held = ctypes.create_string_buffer(length)
    room = ctypes.cast(held, ctypes.POINTER(ctypes.c_ushort))
    raw.FPDFTextObj_GetText(mark, page, room, length)
    size = ctypes.c_float()
    raw.FPDFTextObj_GetFontSize(mark, size)
    *_, across, up = mark.get_matrix().get()
    text = held.raw[: length - 2].decode("utf-16-le")
    return f"  {across:.2f} {up:.2f} {size.value:g} {text}".rstrip()
