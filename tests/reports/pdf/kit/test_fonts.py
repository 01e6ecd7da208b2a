import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st
from reportlab.pdfbase import pdfmetrics

from ledger.errors import RefusedError
from reports.pdf.kit.fonts import BOLD, FACES, REGULAR, check_glyphs, register


@pytest.mark.parametrize("font", FACES)
@pytest.mark.parametrize(
    "text",
    [
        "Lemon essence, 30 mL, ≥5 °C, ½, 2.5 µm, £1–€2 × 3 − 4, “quoted”",
        "Ελληνικό λεμόνι, ΆΈΉΊΌΎΏ",
        "Тархун и Дюшес, Ґанок, Љубав",
        "Nước chanh Ễ ợ ỹ Đ",
        "a\u00a0b",
    ],
    ids=["Latin", "Greek", "Cyrillic", "Vietnamese", "no-break space"],
)
def test_the_trade_s_scripts_can_be_printed(text: str, font: str) -> None:
    check_glyphs(text, font)


@pytest.mark.parametrize(
    ("text", "what"),
    [
        (
            "1 ☃ lemon",
            "The text “1 ☃ lemon” cannot be printed: the font Fira Sans Bold has no shape for "
            "“☃” (U+2603 SNOWMAN).",
        ),
        (
            "柠檬 oil",
            "The text “柠檬 oil” cannot be printed: the font Fira Sans Bold has no shape for "
            "“柠” (U+67E0 CJK UNIFIED IDEOGRAPH-67E0), “檬” (U+6AAC CJK UNIFIED IDEOGRAPH-6AAC).",
        ),
        (
            "a\u200bb",
            "The text “a b” cannot be printed: the font Fira Sans Bold has no shape for "
            "(U+200B ZERO WIDTH SPACE).",
        ),
        (
            "a\x07b",
            "The text “a b” cannot be printed: the font Fira Sans Bold has no shape for (U+0007).",
        ),
        (
            "☃" + "x" * 80,
            f"The text “☃{'x' * 59}…” cannot be printed: the font Fira Sans Bold has no shape for "
            "“☃” (U+2603 SNOWMAN).",
        ),
    ],
    ids=["symbol", "two at once", "invisible", "control", "long text"],
)
def test_what_would_vanish_is_refused_by_name(text: str, what: str) -> None:
    with pytest.raises(RefusedError) as raised:
        check_glyphs(text, BOLD)
    assert raised.value.what == what
    assert raised.value.todo == "Write it with other characters and print again."


@given(st.characters())
def test_a_character_passes_only_with_a_shape_of_its_own(char: str) -> None:
    try:
        check_glyphs(char, REGULAR)
    except RefusedError:
        return
    assert register()[REGULAR].charToGlyph[ord(char)] > 0
    assert unicodedata.category(char)[0] != "C"


@pytest.mark.parametrize("font", FACES)
def test_figures_are_equally_wide(font: str) -> None:
    register()
    assert {pdfmetrics.stringWidth(digit, font, 1000) for digit in "0123456789"} == {560}
