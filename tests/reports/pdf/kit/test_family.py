"""Every paper of the demonstration is of one family: sizes, rules, margins, head and seal."""

import ctypes
from collections.abc import Iterator
from itertools import combinations
from pathlib import Path
from typing import NamedTuple

import pypdfium2 as pdfium  # type: ignore[import-untyped]
import pytest
from pypdfium2 import raw
from reportlab.lib.units import mm

from reports.pdf.bench.sheet import TARGET
from reports.pdf.kit.page import ACROSS, BELOW, SIDE
from reports.pdf.kit.styles import BODY_PT, HEAD_PT, LOT_PT, RULE, SMALL_PT
from reports.pdf.recall.pack import PHONE
from tests.cli.shell import Shell
from tests.demonstration import BOOK, demonstration

COMMANDS = (
    "packet BOS-005-K --out {}",
    "sheet LE-002-P --out {}",
    "trace BOS-005-K --out {}",
    'compare "cloudy orange" --out {}',
    "serving BOS-005-K --out {}",
    "formula show orange-syrup --out {}",
)
"""What prints a paper each; the packet holds records, the spirit account and all entries."""
SIZES = {SMALL_PT, BODY_PT, HEAD_PT, LOT_PT, TARGET.size, PHONE.size, ACROSS.size}
A_HAIR = 0.5
"""What letters may reach over by their shape, in points."""


class Ink(NamedTuple):
    """Words on a page: their size in points, and the box around their ink."""

    text: str
    size: float
    left: float
    below: float
    right: float
    top: float


class Page(NamedTuple):
    """What a page shows."""

    paper: str
    number: int
    of: int
    text: str
    width: float
    words: tuple[Ink, ...]
    thinnest: float


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory) -> list[Page]:
    """Print every paper once."""
    folder = tmp_path_factory.mktemp("family")
    demonstration(tmp_path_factory, folder)
    shell = Shell(folder / BOOK, by="NM")
    for number, command in enumerate(COMMANDS):
        done = shell.line(command.format(folder / f"{number}.pdf"))
        assert done.exit_code == 0, done.err
    assert shell.line(f"recall BOS-005-K --drill --out {folder / 'drill'}").exit_code == 0
    papers = [*(folder / f"{n}.pdf" for n in range(len(COMMANDS))), folder / "drill" / "recall.pdf"]
    return [page for paper in papers for page in _pages(paper)]


def _pages(paper: Path) -> Iterator[Page]:
    with pdfium.PdfDocument(paper) as document:
        for number, page in enumerate(document, 1):
            told = page.get_textpage()
            objects = list(page.get_objects(max_depth=1))
            words = (_ink(each, told) for each in objects if each.type == raw.FPDF_PAGEOBJ_TEXT)
            strokes = [_stroke(each) for each in objects if each.type == raw.FPDF_PAGEOBJ_PATH]
            text = told.get_text_range()
            yield Page(
                document.get_metadata_dict()["Title"],
                number,
                len(document),
                text,
                page.get_width(),
                tuple(ink for ink in words if ink.text),
                min(stroke for stroke in strokes if stroke),
            )


def _ink(each: "pdfium.PdfObject", page: "pdfium.PdfTextPage") -> Ink:
    held = (ctypes.c_ushort * 512)()
    length = raw.FPDFTextObj_GetText(each, page, held, 1024)
    size = ctypes.c_float()
    raw.FPDFTextObj_GetFontSize(each, size)
    text = bytes(held)[: length - 2].decode("utf-16-le").strip()
    return Ink(text, round(size.value, 2), *each.get_bounds())


def _stroke(each: "pdfium.PdfObject") -> float:
    """Return how thick a path is drawn; 0 where it is only filled."""
    fill, stroke, width = ctypes.c_int(), ctypes.c_int(), ctypes.c_float()
    raw.FPDFPath_GetDrawMode(each, fill, stroke)
    raw.FPDFPageObj_GetStrokeWidth(each, width)
    return width.value if stroke.value else 0.0


def test_sizes_are_of_the_family_and_no_rule_is_thinner_than_a_photocopy_holds(
    pages: list[Page],
) -> None:
    assert len(pages) > 25
    for page in pages:
        # A specimen of a label has the sizes of the label.
        if "Specimen label" not in page.text:
            assert {ink.size for ink in page.words} <= SIZES, (page.paper, page.number)
        assert page.thinnest >= RULE, (page.paper, page.number)


def test_every_page_says_which_it_is_of_how_many_and_how_the_book_stood(pages: list[Page]) -> None:
    for page in pages:
        assert f"Page {page.number} of {page.of}" in page.text
        assert "As the book stood 2026-10-" in page.text
        assert "\nRoot " in page.text.replace("\r", "")


def test_no_words_reach_into_the_margins_or_over_others(pages: list[Page]) -> None:
    for page in pages:
        words = [ink for ink in page.words if ink.size != ACROSS.size]
        if "Specimen label" in page.text:
            words = [ink for ink in words if ink.size in SIZES and ink.text != "SPECIMEN"]
        for ink in words:
            inside = ink.left >= SIDE - A_HAIR and ink.right <= page.width - SIDE + A_HAIR
            assert inside, (page.paper, page.number, ink)
            assert ink.below >= BELOW, (page.paper, page.number, ink)
        crossed = [(one, other) for one, other in combinations(words, 2) if _cross(one, other)]
        assert not crossed, (page.paper, page.number, crossed)


def _cross(one: Ink, other: Ink) -> bool:
    return (
        one.left < other.right - A_HAIR
        and other.left < one.right - A_HAIR
        and one.below < other.top - A_HAIR
        and other.below < one.top - A_HAIR
    )


def test_no_page_is_of_signatures_alone(pages: list[Page]) -> None:
    """What is signed stands above: at least two lines between the head and the signatures."""
    assert any(ink.text == "Made by" for page in pages for ink in page.words)
    for page in pages:
        signed = [ink for ink in page.words if ink.text == "Checked by" and ink.size == SMALL_PT]
        for ink in signed:
            above = [other for other in page.words if other.below > ink.top + 10 * mm]
            assert len({round(other.below) for other in above}) >= 4, (page.paper, page.number)
