"""The head of a paper: the house, the kind of paper, the lot and what it is."""

from io import BytesIO

import pytest
from msgspec.structs import replace
from reportlab.lib.units import mm

from reports.kit.frame import Heading
from reports.pdf.kit import head as module
from reports.pdf.kit.boxed import boxed
from reports.pdf.kit.fonts import register
from reports.pdf.kit.head import paper_head, sentences
from reports.pdf.kit.marks import Rule, Symbol, Words
from reports.pdf.kit.page import INNER, write_paper
from reports.pdf.kit.rows import Column, Piece, paragraphs, table
from reports.pdf.kit.styles import GUTTER, NOTE, VALUE
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import FRAME
from tests.reports.pdf.ink import ink_of
from tests.reports.pdf.laid import NARROW, laid


def test_the_house_stands_first_and_a_rule_below_all() -> None:
    register()
    marks = paper_head(FRAME, Heading("Recall drill", "E26-014-7", "Lemon soda")).head.marks
    words = [mark for mark in marks if isinstance(mark, Words)]
    assert [mark.text for mark in words] == [
        "Fennimore & Sloe",
        "2 Invented Lane, Nowhere-on-Sea, NW0 0XX",
        "Recall drill",
        "E26-014-7",
        "Lemon soda",
    ]
    assert [mark.y for mark in words] == sorted(mark.y for mark in words)
    assert isinstance(marks[-1], Rule)
    assert marks[-1].y > words[-1].y


def test_every_mark_of_the_parts_of_papers_stands_where_it_stood() -> None:
    """A head without address or symbol, one with both; boxes, rows and words without a shape."""
    register()
    long = "Words that go on in a further line since they are many. " * 4
    columns = (Column("lot", 100), Column("amount", INNER + GUTTER - 100, "right"))
    rows = [
        [(Piece("OE-001-5", VALUE), Piece(long, NOTE)), (Piece("418 mL", struck=True),)],
        [(Piece("試験 of x", struck=True),), ()],
        [(), (Piece(long, struck=True),)],
    ]
    sections = [
        paper_head(replace(FRAME, house_address=None), Heading("Drill", "E1", "Lemon")),
        paper_head(FRAME, Heading("Batch record", "E26-014-7", "Lemon 試", symbol="E26")),
        boxed("Cautions", ["One.", long]),
        boxed("None", []),
        table("Rows", columns, rows),
        table("None", columns, []),
        paragraphs([long, "Short."], NOTE),
        *sentences(["Set them aside.", long]),
        *sentences(["Set apart."], VALUE),
    ]
    out = BytesIO()
    heading = Heading("Kind", "E26-014-7 " * 9, "Lemon " * 40, "on hold", across="DRILL")
    write_paper(out, FRAME, heading, sections, sections[:1])
    check_golden("ink/parts.txt", ink_of(out.getvalue()))


def test_a_lot_has_its_symbol_beside_its_name() -> None:
    register()
    heading = Heading("Batch record", "E26-014-7", symbol="E26-014-7")
    (symbol,) = [m for m in paper_head(FRAME, heading).head.marks if isinstance(m, Symbol)]
    assert symbol.text == "E26-014-7"


def test_a_head_is_as_high_as_its_symbol_where_its_words_are_fewer() -> None:
    """The house, the kind and the lot are 20 mm; the symbol 23.5, and 3 are below it."""
    register()
    told = paper_head(replace(FRAME, house_address=None), Heading("Trace", "E1", symbol="E1"))
    assert told.head.height == pytest.approx(26.5 * mm)


def test_a_long_sentence_stays_whole_in_one_strip() -> None:
    register()
    short, long = sentences(["Set them aside.", "Set them aside until we collect them. " * 8])
    assert len(short.head.marks) == 1
    assert len(long.head.marks) > 1
    assert long.rows == ()


def test_every_mark_of_a_head_and_of_sentences_is_laid_out_as_it_was() -> None:
    register()
    full = Heading("Batch record", "E26-014-7", "Lemon soda " * 20, symbol="E26-014-7")
    bare = Heading("Trace", "")
    heads = (full, replace(full, symbol=""), bare, replace(full, product=NARROW))
    told = [paper_head(FRAME, each) for each in heads]
    long = "Set them aside until we collect them. " * 8
    check_golden(
        "laid/head.txt",
        laid(*told, *sentences(["Short.", long, NARROW]), *sentences([long], VALUE)),
    )


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
