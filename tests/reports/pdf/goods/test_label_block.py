"""The sizes of a label's words, held against what the law asks for."""

from reportlab.lib.units import mm

from reports.pdf.goods.label_block import LEAST, VOLUME
from reports.pdf.kit.fonts import REGULAR, register
from reports.pdf.kit.text import CAP_HEIGHT


def test_the_least_size_has_the_x_height_the_law_asks_for() -> None:
    """Regulation (EU) No 1169/2011, Article 13(2): at least 1.2 mm; x by its outline."""
    face = register()[REGULAR]
    offset = face.get_table_pos("glyf")[0] + face.glyphPos[face.charToGlyph[ord("x")]]
    face.seek(offset + 8)
    assert face.read_short() / face.unitsPerEm * LEAST / mm >= 1.2


def test_the_figures_of_the_volume_are_four_millimetres_high() -> None:
    """Directive 76/211/EEC, Annex I (from memory)."""
    assert VOLUME.size * CAP_HEIGHT / mm >= 4
