import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st
from reportlab.pdfbase import pdfmetrics

from reports.pdf.kit import fonts as module
from reports.pdf.kit.fonts import FACES, REGULAR, printable, register
from tests.kept.said import check_constants


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
    assert set(text) <= printable(font)


@given(st.characters())
def test_a_character_passes_only_with_a_shape_of_its_own(char: str) -> None:
    if char not in printable(REGULAR):
        return
    assert register()[REGULAR].charToGlyph[ord(char)] > 0
    assert unicodedata.category(char)[0] != "C"


@pytest.mark.parametrize("font", FACES)
def test_figures_are_equally_wide(font: str) -> None:
    register()
    assert {pdfmetrics.stringWidth(digit, font, 1000) for digit in "0123456789"} == {560}


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
