"""What frames every page: whose it is and which of how many, the seal, the date of the file."""

from collections import Counter
from datetime import datetime, timedelta, timezone
from io import BytesIO

import pypdfium2 as pdfium  # type: ignore[import-untyped]
import pytest
from msgspec.structs import replace
from reportlab.lib.units import mm

from ledger.domain.evidence.seals import in_symbol
from ledger.errors import RefusedError
from reports.kit.frame import Heading, PageSize
from reports.pdf.kit import page as module
from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Symbol, Words
from reports.pdf.kit.page import (
    FOOT_ROOM,
    LEAST_SEAL_DOTS,
    SEAL_SQUARE,
    SIZES,
    foot,
    running_head,
    write_paper,
)
from reports.pdf.kit.qr import DOT
from reports.pdf.kit.rows import Column, Piece, table
from reports.pdf.kit.strips import Section, Strip
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import FRAME, SEAL
from tests.reports.pdf.ink import ink_of
from tests.reports.pdf.laid import NARROW, laid
from tests.reports.pdf.readback import images_of, metadata_of, symbols_of, texts_of

HEADING = Heading("Batch record", "E26-014-7", "Lemon essence", "on hold")


def paper(size: PageSize = "A4", rows: int = 60, across: str = "") -> bytes:
    out = BytesIO()
    section = table("Rows", [Column("", 500)], [[(Piece(f"row {n}"),)] for n in range(rows)])
    frame = replace(FRAME, size=size)
    write_paper(out, frame, replace(HEADING, across=across), [section])
    return out.getvalue()


def test_a_foot_says_once_when_and_has_the_seal_in_words_and_as_a_symbol() -> None:
    register()
    strip = foot(FRAME.stood, SEAL)
    words = [mark.text for mark in strip.marks if isinstance(mark, Words)]
    (symbol,) = [mark for mark in strip.marks if isinstance(mark, Symbol)]
    assert words == ["As the book stood 2026-03-05 09:12, all times Europe/London", *SEAL]
    assert symbol.text == in_symbol(SEAL)
    assert strip.height == FOOT_ROOM
    assert (symbol.size, symbol.least_dots) == (SEAL_SQUARE, LEAST_SEAL_DOTS)
    assert 18 * mm == SEAL_SQUARE
    assert 0.4 * mm <= LEAST_SEAL_DOTS * DOT


def test_a_foot_that_is_too_high_is_refused_with_what_it_has() -> None:
    register()
    with pytest.raises(RefusedError) as raised:
        foot("Batch record E26-014-7", ("word " * 400,))
    assert raised.value.what.startswith("The foot of the page, with the seal, needs ")
    assert raised.value.what.endswith(" mm of height and has 19.0 mm.")
    assert raised.value.todo == "Shorten the name of the house and print again."


def test_a_running_head_says_whose_page_it_is_and_cuts_what_is_too_long() -> None:
    register()
    strip = running_head(replace(HEADING, product="Essence " * 40), 2, 3)
    code, about, page = (mark.text for mark in strip.marks if isinstance(mark, Words))
    assert (code, page, about[-1]) == ("E26-014-7", "Page 2 of 3", "…")


@pytest.mark.parametrize("size", ["A4", "Letter"])
def test_every_page_has_its_head_and_its_seal_on_either_sheet(size: PageSize) -> None:
    pdf = paper(size)
    pages = texts_of(pdf)
    assert len(pages) == 2
    for number, text in enumerate(pages, 1):
        assert text.startswith(f"E26-014-7 Lemon essence, on hold Page {number} of 2\n")
        assert text.endswith("\n".join([FRAME.stood, *SEAL]))
    with pdfium.PdfDocument(pdf) as document:
        assert document[0].get_size() == pytest.approx(
            (SIZES[size].width, SIZES[size].height), abs=0.01
        )
    assert [symbols_of(image) for image in images_of(pdf)] == [[in_symbol(SEAL)]] * 2


def test_the_file_is_dated_by_its_newest_entry_unless_the_surroundings_date_it(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """SOURCE_DATE_EPOCH: reproducible-builds.org, specification of the variable."""
    monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)
    assert metadata_of(paper())["CreationDate"] == "D:20260305091200+00'00'"
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "86400")
    assert metadata_of(paper())["CreationDate"] == "D:19700102000000+00'00'"


def test_the_file_lists_its_parts_names_its_tongue_and_is_never_scaled() -> None:
    """PDF 32000-1: 7.9.2 and 14.9.2 (Lang), 12.2 (PrintScaling, DisplayDocTitle), 12.3.3."""
    pdf = paper()
    for words in (b"/Lang (en-GB)", b"/PrintScaling /None", b"/DisplayDocTitle true"):
        assert words in pdf
    with pdfium.PdfDocument(pdf) as document:
        assert [item.get_title() for item in document.get_toc()] == ["Rows"]


def test_every_face_is_embedded_and_the_seal_is_drawn_once() -> None:
    pdf = paper(across="DRILL")
    assert b"Helvetica" not in pdf
    assert pdf.count(b"/BaseFont") == pdf.count(b"/FontFile2 ")
    assert Counter(pdf.split())[b"/Form"] == 1
    assert all("DRILL" in text for text in texts_of(pdf))


def test_every_mark_of_head_and_foot_stands_where_it_stood() -> None:
    """Heads short and too long, with each of their parts; feet with and without a lead."""
    register()
    told = []
    for heading in (
        HEADING,
        replace(HEADING, product="", status=""),
        replace(HEADING, product=""),
        replace(HEADING, code="E26-014-7 " * 20, product="Lemon " * 40),
        replace(HEADING, product=NARROW),
    ):
        told += [Section(running_head(heading, page, 12), Strip(0)) for page in (1, 12)]
    long = (SEAL[0], "Entries: many words " * 8, SEAL[2])
    told += [
        Section(foot(lead, seal), Strip(0)) for lead in ("As it stood", "") for seal in (SEAL, long)
    ]
    told.append(Section(foot("", (NARROW[:400],)), Strip(0)))
    sizes = "".join(
        f"{name} {size.width:.2f} {size.height:.2f} {size.body:.2f} {size.shift:.2f}\n"
        for name, size in SIZES.items()
    )
    check_golden("laid/page.txt", f"{laid(*told)}{sizes}")


@pytest.mark.parametrize("size", ["A4", "Letter"])
def test_every_mark_of_a_paper_stands_where_it_stood_on_either_sheet(size: PageSize) -> None:
    pdf = paper(size, 2, "DRILL")
    with pdfium.PdfDocument(pdf) as document:
        about = document.get_metadata_dict()
    names = ("Title", "Author", "Subject", "Creator", "Producer")
    told = "".join(f"{name}: {about[name]}\n" for name in names)
    check_golden(f"ink/page_{size}.txt", f"{told}{ink_of(pdf)}")


def test_a_foot_that_just_fits_is_not_refused() -> None:
    """A line is 3 mm high, the lead stands 1.5 mm below the rule, and 19 mm are kept."""
    register()
    assert foot("", ("line",) * 5).height == FOOT_ROOM
    with pytest.raises(RefusedError) as raised:
        foot("", ("line",) * 6)
    assert raised.value.what == (
        "The foot of the page, with the seal, needs 19.5 mm of height and has 19.0 mm."
    )


def test_a_paper_of_a_book_without_entries_has_no_date_of_its_own() -> None:
    out, frame = BytesIO(), replace(FRAME, shown_at=None)
    write_paper(out, frame, HEADING, [table("Rows", [Column("", 500)], [])])
    assert metadata_of(out.getvalue())["CreationDate"] == "D:20000101000000+00'00'"
    other = replace(
        FRAME, shown_at=datetime(2026, 3, 5, 11, 12, tzinfo=timezone(timedelta(hours=2)))
    )
    out = BytesIO()
    write_paper(out, other, HEADING, [table("Rows", [Column("", 500)], [])])
    assert metadata_of(out.getvalue())["CreationDate"] == "D:20260305091200+00'00'"


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
