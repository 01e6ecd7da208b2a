from functools import partial
from io import BytesIO
from typing import get_args

import pypdfium2 as pdfium  # type: ignore[import-untyped]
import pytest
from hypothesis import given
from hypothesis import strategies as st
from reportlab.pdfgen.canvas import Canvas

from reports.kit.boxed import boxed_words, noting_boxed
from reports.pdf.kit import text as module
from reports.pdf.kit.fonts import REGULAR
from reports.pdf.kit.marks import Words
from reports.pdf.kit.strips import Strip, draw_strips
from reports.pdf.kit.text import (
    Align,
    Face,
    draw_text,
    fitting,
    strike,
    widest_word,
    width_of,
    words_of,
    wrap,
)
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.ink import ink_of

FACE = Face(REGULAR, 8)
RECTANGLE = 2
"""What a path is to the reader."""

WORDS = st.text(st.sampled_from("abWi.-/ "), max_size=80)


@given(WORDS, st.floats(10, 200))
def test_no_line_is_wider_than_its_room_and_no_character_is_lost(text: str, room: float) -> None:
    lines = wrap(text, FACE, lambda _: room)
    assert all(width_of(line, FACE) <= room for line in lines)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")


@given(WORDS)
def test_words_stay_whole_where_each_fits(text: str) -> None:
    lines = wrap(text, FACE, lambda _: max(widest_word(text, FACE), 1.0))
    assert " ".join(lines).split() == text.split()


@pytest.mark.parametrize(
    ("text", "room", "lines"),
    [
        ("", 50, [""]),
        ("one\ntwo", 500, ["one", "two"]),
        ("E26-014-7/LO", 36, ["E26-014-", "7/LO"]),
        ("abcdefghijkl", 22, ["abcd", "efghij", "kl"]),
        ("30\u00a0mL of oil", 28, ["30 mL", "of oil"]),
        ("30 mL of oil, at 6 °C", 34, ["30 mL of", "oil, at", "6 °C"]),
        ("Nu\u031bo\u031b\u0301c", 50, ["Nước"]),
    ],
    ids=[
        "empty",
        "own line ends",
        "after a hyphen",
        "anywhere",
        "held together",
        "units",
        "composed",
    ],
)
def test_lines_break_where_a_reader_expects(text: str, room: float, lines: list[str]) -> None:
    assert wrap(text, FACE, lambda _: room) == lines


def test_each_line_has_the_room_of_its_number() -> None:
    assert wrap("aaaa aaaa aaaa aaaa", FACE, lambda line: 20 if line < 2 else 100) == [
        "aaaa",
        "aaaa",
        "aaaa aaaa",
    ]


@pytest.mark.parametrize("align", get_args(Align))
@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("1 ☃ lemon", "1 2603 lemon"),
        ("柠檬 oil", "67E06AAC oil"),
        ("a\u200bb", "a200Bb"),
        ("a\x07b", "a0007b"),
    ],
    ids=["symbol", "two at once", "invisible", "control"],
)
def test_a_character_without_a_shape_is_its_number_in_a_box(
    text: str, read: str, align: Align
) -> None:
    """It is noted, and the words after it stand where the measured width says."""
    out = BytesIO()
    canvas = Canvas(out, pagesize=(200, 50), invariant=1)
    with noting_boxed() as boxed:
        draw_strips(canvas, [Strip(20, (Words(100, 10, text, FACE, align),))], 40)
    canvas.save()
    with pdfium.PdfDocument(out.getvalue()) as document:
        page = document[0]
        said = "".join(page.get_textpage().get_text_bounded().split())
        drawn = [thing for thing in page.get_objects() if thing.type == RECTANGLE]
    assert said == read.replace(" ", "")
    assert boxed == {char for char in text if not char.isascii() or not char.isprintable()}
    assert len(drawn) == len(boxed)
    assert width_of(text, FACE) > width_of("".join(c for c in text if c not in boxed), FACE)


def test_what_was_boxed_is_said_by_name() -> None:
    assert boxed_words({"☃"}) == (
        "No font here has a shape for “☃” (U+2603 SNOWMAN); its number stands in a box on the "
        "paper."
    )
    assert boxed_words({"柠", "\x07"}) == (
        "No font here has a shape for (U+0007), “柠” (U+67E0 CJK UNIFIED IDEOGRAPH-67E0); their "
        "numbers stand in boxes on the paper."
    )


def test_what_is_as_wide_as_its_room_stands_on_one_line() -> None:
    """Two words, a word alone, and as much of a longer word as has exactly the room."""
    two, one = width_of("lemon peel", FACE), width_of("lemon", FACE)
    assert wrap("lemon peel", FACE, lambda _: two) == ["lemon peel"]
    assert wrap("lemon", FACE, lambda _: one) == ["lemon"]
    assert wrap("lemonlemo", FACE, lambda _: one) == ["lemon", "lemo"]


def test_widths_and_breaks_of_texts_are_as_kept() -> None:
    """With words too long for a line, signs to break after, and characters without a shape."""
    texts = (
        "",
        "a",
        "lemon peel, orange peel",
        "E26-014-7/LO_x.y,z;a:b+c-" * 2,
        "abcdefghijklmnopqrstuvwxyz",
        "1 ☃ lemon☃☃",
        "☃",
        "one\ntwo  three\n\nfour ",
        "30\u00a0mL at 6 °C",
    )
    told = [f"{FACE.leading:.3f} {FACE.drop:.3f} {Face(REGULAR, 20, 1.1).drop:.3f}"]
    for text in texts:
        widths = (width_of(text, FACE), widest_word(text, FACE))
        told.append(f"{text!r}: {widths[0]:.3f} {widths[1]:.3f} {words_of(text)}")
        for room in (3, 17, 40, 90):
            lines = wrap(text, FACE, partial(_wider, room))
            told.append(f"  {room}: {lines} {fitting(text, FACE, room)!r}")
        whole = width_of(text, FACE)
        told.append(f"  {fitting(text, FACE, whole)!r} {fitting(text, FACE, whole - 0.01)!r}")
    check_golden("laid/text.txt", "\n".join(told) + "\n")


def _wider(room: float, number: int) -> float:
    return room + 9 * number


def test_every_mark_of_a_line_stands_where_it_stood() -> None:
    out = BytesIO()
    canvas = Canvas(out, pagesize=(400, 100), invariant=1)
    draw_text(canvas, 20, 80, "1 ☃ lemon柠", FACE, "left")
    draw_text(canvas, 300, 60, "1 ☃ lemon柠", Face(REGULAR, 12), "right")
    draw_text(canvas, 20, 40, "", FACE, "left")
    strike(canvas, 20, 20, 100, 10)
    canvas.setProducer("Invented")
    canvas.save()
    check_golden("ink/text.txt", ink_of(out.getvalue()))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
