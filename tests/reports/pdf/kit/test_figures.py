"""The mapping is checked against a table written by hand from the OpenType specification."""

from struct import pack

import pytest

from reports.pdf.kit import figures as module
from reports.pdf.kit.figures import equal_width
from reports.pdf.kit.fonts import FACES, register
from tests.kept.said import check_constants


def _gsub(tag: bytes, subtable: bytes, kind: int = 1) -> bytes:
    """A GSUB table with one feature of one lookup."""
    features = pack(">H", 1) + tag + pack(">HHHH", 8, 0, 1, 0)
    lookups = pack(">HHHHHH", 1, 4, kind, 0, 1, 8) + subtable
    header = pack(">HHHHH", 1, 0, 0, 10, 10 + len(features))
    return header + features + lookups


SHIFTED = pack(">HHh", 1, 6, 20) + pack(">HHHH", 1, 2, 47, 50)
LISTED = pack(">HHHHH", 2, 10, 2, 300, 290) + pack(">HHHHH", 2, 1, 48, 49, 0)


@pytest.mark.parametrize(
    ("gsub", "pairs"),
    [
        (_gsub(b"tnum", SHIFTED), {47: 67, 50: 70}),
        (_gsub(b"tnum", LISTED), {48: 300, 49: 290}),
        (_gsub(b"onum", LISTED), {}),
        (_gsub(b"tnum", LISTED, kind=4), {}),
        (b"", {}),
    ],
    ids=["shifted glyphs", "listed ranges", "another feature", "a ligature", "no table"],
)
def test_equal_width_forms_are_read_from_the_table(gsub: bytes, pairs: dict[int, int]) -> None:
    assert equal_width(gsub) == pairs


@pytest.mark.parametrize("font", FACES)
def test_digits_are_printed_in_their_form_of_equal_width(font: str) -> None:
    """Each face has such forms, next to each other in its font, of 560 thousandths of its size."""
    face = register()[font]
    glyphs = [face.charToGlyph[ord(digit)] for digit in "0123456789"]
    assert glyphs == list(range(glyphs[0], glyphs[0] + 10))
    assert {face.charWidths[ord(digit)] for digit in "0123456789"} == {560.0}


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
