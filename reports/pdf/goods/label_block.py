"""What stands on a bottle label, in which face and how small it may become.

Guarantees: a field without a value leaves no trace; no words may be set smaller than their least
size; a name of 16 points or more becomes smaller only where all other words are at their least.

References:
    Regulation (EU) No 1169/2011, Article 13(2) and Annex IV: an x-height of at least 1.2 mm;
    Article 13(3): of at least 0.9 mm on packages whose largest surface is below 80 cm².
    21 CFR 101.2(c): ingredients, allergens, name and place with a letter o of at least 1/16 inch,
    1.59 mm; of 1/32 inch, 0.79 mm, on packages of less than 12 square inches (from memory).
    21 CFR 101.7(i): net contents with letters of at least 1/16 inch on a panel up to 5 square
    inches, 1/8 up to 25, 3/16 up to 100, 1/4 up to 400, and 1/2 above, by the letter o where not
    all are capitals; 101.3(d): the name at least half as large as the largest print
    (label_law.csv).
    Safe Food for Canadians Regulations, section 210(2): at least 1.6 mm (label_law.csv).
    Regulation (EU) No 1169/2011, Annex III, 3.1: contains liquorice right after the list
    (label_law.csv).
    Directive 76/211/EEC, Annex I, 3.1: net volume in figures of at least 2 mm up to 50 mL, 3 mm up
    to 200 mL, 4 mm up to 1 L, and 6 mm above (read).
"""

from collections.abc import Iterator

from msgspec import Struct
from msgspec.structs import replace
from reportlab.lib.units import inch, mm

from reports.pdf.goods.layouts import Plate
from reports.pdf.kit.fonts import BOLD, MEDIUM, REGULAR
from reports.pdf.kit.text import CAP_HEIGHT, Face, widest_word, width_of
from reports.views.goods import LabelView, Panel

LEAST = 6.5
"""The least size in points of any words: an x-height of 1.2 mm."""

LEAST_SMALL = 4.9
"""The same on a small bottle: an x-height of 0.9 mm."""

LEAST_US = 8.6
"""The least size on a label of the United States: an x-height of 1.59 mm."""

LEAST_CANADA = 8.7
"""The least size on a label of Canada: an x-height of 1.6 mm."""

X_HEIGHT = 0.527
"""Height of a letter o over the size of the face."""

US_CONTENTS = ((5, 1 / 16), (25, 1 / 8), (100, 3 / 16), (400, 1 / 4))
"""Least letters of net contents in inches, on panels up to so many square inches."""
US_LARGEST = 1 / 2
"""The same above."""

LEAST_PRODUCT = 9.0
"""The least size in points of the product's name, where a label is one panel."""

NAME, LARGEST_NAME = 16.0, 24.0
"""The product's name in points: as long as there is room, and at most."""

A_HAIR = 0.01
"""What the rounding of floats may add to a width in points."""

SPACING = 1.15
"""Leading over size: close, since a label is small."""


class Block(Struct, frozen=True):
    """Words of one face; sizes in points."""

    name: str
    text: str
    font: str
    largest: float
    least: float = LEAST
    kept: float | None = None
    """The size to which it shrinks before all others, and which it keeps until they have."""

    def largest_within(self, width: float) -> float:
        """Find the largest size at which its widest word fits; may be under the least.

        What has a size to keep stands on one line where it can at that size.
        """
        needed = widest_word(self.text, Face(self.font, 1.0))
        if not needed:
            return self.largest
        whole = (width - A_HAIR) / width_of(self.text, Face(self.font, 1.0))
        if self.kept is not None and self.kept <= whole:
            return min(self.largest, whole)
        return min(self.largest, width / needed)

    def face(self, shrink: float, width: float) -> Face:
        """Choose the face; `shrink` goes from 0, all at their largest, to 3, all at their least.

        Its widest word fits `width` points, unless it does not even at the least size.
        """
        first, second, third = (min(max(shrink - begun, 0.0), 1.0) for begun in (0, 1, 2))
        if self.kept is None:
            wanted = self.largest - second * (self.largest - self.least)
        else:
            wanted = self.largest - first * (self.largest - self.kept)
            wanted -= third * (self.kept - self.least)
        return Face(self.font, max(self.least, min(wanted, self.largest_within(width))), SPACING)


def _dates(label: LabelView) -> str:
    """Say how long it is best, if known, and when it was made; neither date is broken."""
    told = [words for words in (label.best_before, label.made_on) if words]
    kept = ", ".join(words.replace(" ", "\u00a0") for words in told)
    return kept.replace(",\u00a0", ", ")


def least_name(label: LabelView, plate: Plate) -> float:
    """Return the least size in points of the name on a label of one panel."""
    half = volume_face(label, plate).size / 2 if label.is_us else 0.0
    return max(LEAST_PRODUCT, half)


def upper_blocks(
    label: LabelView, least: float = LEAST, name_least: float = LEAST_PRODUCT
) -> list[Block]:
    """List what stands beside and below the symbol, in order; `least` is the least size."""
    strength = (label.strength or "").replace(" ", "\u00a0")
    if label.panel is Panel.FRONT:
        name = Block("product", label.product, BOLD, LARGEST_NAME, NAME, NAME)
        return _with_words([name, Block("strength", strength, MEDIUM, 12)], least)
    blocks = [
        Block("product", label.product, BOLD, 9)
        if label.panel is Panel.BACK
        else Block("product", label.product, BOLD, LARGEST_NAME, name_least, NAME),
        Block("lot code", f"{label.lot_word} {label.lot}", MEDIUM, 10),
        Block("strength", strength, MEDIUM, 9),
        Block("dates", _dates(label), REGULAR, 8),
        Block("dilution", label.dilution or "", MEDIUM, 8.5),
        Block("label text", label.text or "", REGULAR, 7.5),
        Block("cautions", " ".join(label.cautions), BOLD, 7.5),
        *_declared_blocks(label),
    ]
    return _with_words(blocks, least)


def _declared_blocks(label: LabelView) -> list[Block]:
    """List the list of ingredients, the statements right after it, and what else is declared."""
    blocks = [(item, Block(item.name, item.text, REGULAR, 7.5)) for item in label.declared]
    return [
        *(block for item, block in blocks if item.is_list),
        Block("statements", " ".join(label.statements), MEDIUM, 7.5),
        *(block for item, block in blocks if not item.is_list),
    ]


def maker_blocks(label: LabelView, least: float = LEAST) -> list[Block]:
    """List what stands at the foot, left of the volume; `least` is the least size."""
    blocks = [
        Block("maker's name", label.house_name, MEDIUM, 8),
        Block("maker's address", label.house_address or "", REGULAR, 7),
    ]
    return _with_words(blocks, least)


def volume_face(label: LabelView, plate: Plate) -> Face:
    """Return the face of a label's net volume, which never shrinks.

    In the United States it is by the size of the panel too: the bottle's, or the paper where that
    is larger.
    """
    size = label.figures_mm * mm / CAP_HEIGHT
    if label.is_us:
        area = max(label.panel_sq_in, plate.width * plate.height / inch**2)
        letters = next((high for most, high in US_CONTENTS if area <= most), US_LARGEST)
        size = max(size, letters * inch / X_HEIGHT)
    return Face(MEDIUM, round(size + 0.05, 1), SPACING)


def leasts_of(label: LabelView) -> tuple[float, ...]:
    """Return the least sizes of a label's words but the product's name, as they are tried."""
    if label.is_canadian:
        return (LEAST_CANADA,)
    usual = LEAST_US if label.is_us else LEAST
    return (usual, LEAST_SMALL) if label.is_small else (usual,)


def shorter(label: LabelView) -> Iterator[tuple[LabelView, tuple[str, ...]]]:
    """Yield a label whole, then with ever more of what it declares cut to its least.

    Yields:
        Each with the names of what is cut; the last says the least it must.
    """
    declared, cut = label.declared, tuple[str, ...]()
    yield label, cut
    for number in reversed(range(len(declared))):
        item = label.declared[number]
        if item.least == item.text:
            continue
        shortened = replace(item, text=item.least)
        declared = (*declared[:number], shortened, *declared[number + 1 :])
        cut = (item.name, *cut)
        yield replace(label, declared=declared), cut


def _with_words(blocks: list[Block], least: float) -> list[Block]:
    """Keep the blocks with words, each with its least size."""
    return [
        # Where the law asks for more than words would have, they have that.
        replace(block, least=least, largest=max(block.largest, least))
        if block.least == LEAST
        else block
        for block in blocks
        if block.text.strip()
    ]
