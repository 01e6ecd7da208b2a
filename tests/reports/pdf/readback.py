"""Read papers back: their words, their symbols, their ink."""

from collections.abc import Callable
from io import BytesIO
from random import Random
from typing import BinaryIO, TypeVar

import pypdfium2 as pdfium  # type: ignore[import-untyped]
import zxingcpp
from PIL import Image, ImageFilter, ImageOps

View = TypeVar("View")


def printed(paper: Callable[[View, BinaryIO], None], view: View) -> bytes:
    out = BytesIO()
    paper(view, out)
    return out.getvalue()


def texts_of(pdf: bytes) -> list[str]:
    """Read the words of each page."""
    with pdfium.PdfDocument(pdf) as document:
        pages = [page.get_textpage().get_text_range() for page in document]
    return [page.replace("\r\n", "\n") for page in pages]


def text_of(pdf: bytes) -> str:
    """Read the words of all pages, each page ended by a line of its own."""
    return "".join(f"{page}\n=== page ends ===\n" for page in texts_of(pdf))


def images_of(pdf: bytes) -> list[Image.Image]:
    """Print each page at 300 dpi in grey."""
    with pdfium.PdfDocument(pdf) as document:
        return [page.render(scale=300 / 72, grayscale=True).to_pil() for page in document]


def symbols_of(image: Image.Image) -> list[str]:
    """Read every QR symbol on a page."""
    return [found.text for found in zxingcpp.read_barcodes(image)]


def photocopy(image: Image.Image, seed: int) -> Image.Image:
    """Copy as an office machine does: a little soft, a little turned, specks, and hard contrast."""
    copied = image.filter(ImageFilter.GaussianBlur(1.4)).rotate(0.4, fillcolor=255)
    chance = Random(seed)
    for _ in range(copied.width * copied.height // 800):
        place = chance.randrange(copied.width), chance.randrange(copied.height)
        copied.putpixel(place, chance.choice((0, 90, 255)))
    return ImageOps.autocontrast(copied.point(lambda dot: min(255, int(dot * 1.15))))


def metadata_of(pdf: bytes) -> dict[str, str]:
    with pdfium.PdfDocument(pdf) as document:
        return dict(document.get_metadata_dict())
