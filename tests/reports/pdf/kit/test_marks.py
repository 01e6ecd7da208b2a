"""Marks are moved down and to the right, and nothing else of them changes."""

from io import BytesIO

from reportlab.pdfgen.canvas import Canvas

from reports.pdf.kit import marks as module
from reports.pdf.kit.bars import FNC1
from reports.pdf.kit.fonts import REGULAR, register
from reports.pdf.kit.marks import (
    Across,
    Bars,
    Box,
    Dot,
    Patch,
    Rule,
    Symbol,
    Upright,
    Words,
    lowered,
    shifted,
)
from reports.pdf.kit.text import Face
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.ink import ink_of

MARKS = (
    Words(10, 20, "Lot", Face(REGULAR, 9), "right", struck=True),
    Rule(10, 20, 30, 25, 0.5),
    Symbol(10, 20, "E26-014-7", 40),
)


def test_both_ends_of_a_rule_are_moved_down_with_the_words() -> None:
    words, rule, symbol = lowered(MARKS, 5)
    assert words == Words(10, 25, "Lot", Face(REGULAR, 9), "right", struck=True)
    assert (rule, symbol) == (Rule(10, 25, 30, 30, 0.5), Symbol(10, 25, "E26-014-7", 40))


def test_both_ends_of_a_rule_are_moved_to_the_right() -> None:
    words, rule, symbol = shifted(MARKS, 5)
    assert words == Words(15, 20, "Lot", Face(REGULAR, 9), "right", struck=True)
    assert (rule, symbol) == (Rule(15, 20, 35, 25, 0.5), Symbol(15, 20, "E26-014-7", 40))


def test_a_patch_moves_with_all_its_corners() -> None:
    (moved,) = shifted(lowered([Patch(((0.0, 0.0), (2.0, 1.0)))], 3.0), 1.0)
    assert isinstance(moved, Patch)
    assert moved.corners == ((1.0, 3.0), (3.0, 4.0))


def test_every_mark_leaves_its_ink() -> None:
    """Each kind with and without what it may have; what follows a mark is not coloured by it."""
    register()
    face = Face(REGULAR, 9)
    out = BytesIO()
    canvas = Canvas(out, pagesize=(400, 300), invariant=1)
    after = Words(300, 20, "after", face)
    for mark in (
        Words(10, 20, "Lot", face),
        Words(10, 40, "Lot", face, "right", struck=True),
        Words(10, 60, "Lot", face, struck=True, is_white=True),
        Words(10, 80, "", face, struck=True),
        Rule(10, 90, 200, 95, 0.5, is_dashed=True),
        Rule(10, 100, 200, 105, 0.7),
        Upright(50, 200, "E26-014-7", face),
        Box(10, 110, 30, 20),
        Box(50, 110, 30, 20, 0.5),
        Box(90, 110, 30, 20, 0.0, 0.7),
        Box(130, 110, 30, 20, None, 0.3),
        Dot(10, 150, 3),
        Dot(30, 150, 3, is_hollow=True),
        Patch(((10.0, 160.0), (20.0, 160.0), (15.0, 170.0))),
        Patch(((30.0, 160.0), (40.0, 160.0), (35.0, 170.0)), is_white=True),
        Bars(10, 250, f"{FNC1}10LOT", 0.72, 20),
        Symbol(200, 250, "E26-014-7", 60),
        Symbol(300, 250, "E26-014-7", 60, 3, 203),
        Across(200, 150, "DRILL", Face(REGULAR, 40), 30.0),
    ):
        mark.draw(canvas, 300)
        after.draw(canvas, 300)
    canvas.setProducer("Invented")
    canvas.save()
    check_golden("ink/marks.txt", ink_of(out.getvalue()))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
