"""What labels show, as plain frozen data.

Guarantees: every text is ready to print. Refuses: quantities, times and codes that are not words
yet.
"""

from enum import StrEnum

from msgspec import Struct

from reports.kit.frame import Frame


class Declared(Struct, frozen=True):
    """What a label declares where there is room, and what it says at the least."""

    name: str
    """What it is, in words."""
    text: str
    """The whole of it."""
    least: str = ""
    """What stands in its place where the whole does not fit; nothing where that may be."""
    is_list: bool = False
    """Whether it is the list of ingredients, right after which statements stand."""


class Panel(StrEnum):
    """Which part of a bottle's label a piece of paper is."""

    WHOLE = "label"
    FRONT = "front"
    BACK = "back"


class LabelView(Struct, frozen=True):
    """One bottle label, or one of its panels."""

    house_name: str
    """The maker's name."""
    house_address: str | None
    """The maker's address in one line."""
    product: str
    """What is in the bottle."""
    lot: str
    """The lot's code, printed and carried by the QR symbol."""
    volume: str
    """Net volume of one bottle, such as 250 mL; where two units are asked for, both."""
    made_on: str
    """When it was made, in words; empty when nobody knows."""
    best_before: str | None
    """Until when it is best, in words; None when no day is known."""
    dilution: str | None
    """How to dilute it, in one line."""
    text: str | None
    """What the formula's label says besides."""
    cautions: tuple[str, ...]
    """Warnings, each a sentence."""
    strength: str | None
    """Strength as it was made, such as alc. 2.6 % vol; None when there is none to say."""
    statements: tuple[str, ...]
    """Statements that the contents call for, each a sentence."""
    declared: tuple[Declared, ...]
    """What it declares besides; where there is no room the last is cut to its least first."""
    is_us: bool
    """Whether it is a label of the United States, whose least letters are other ones."""
    is_canadian: bool
    """Whether it is a label of Canada, likewise."""
    is_small: bool
    """Whether the bottle is so small that its words may be smaller."""
    figures_mm: float
    """Height that the figures of the volume must have, in millimetres."""
    panel_sq_in: float
    """How large the panel of the bottle may be that the label is on, in square inches."""
    lot_word: str
    """The word before the lot."""
    across: str | None = None
    """A word across it, where it is for no bottle that leaves."""
    symbol: str = ""
    """What the QR symbol says; the lot where nothing else."""
    panel: Panel = Panel.WHOLE
    """Whether it is all of the label, or a front or a back panel of it."""


class TagView(Struct, frozen=True):
    """A label for the shelf, the bench or the carton, not for a bottle that is sold."""

    title: str
    """What it is on, the largest words after the big one."""
    lot: str
    """The lot's code."""
    big: str = ""
    """One word to be read from afar, such as HOLD."""
    rows: tuple[tuple[str, str], ...] = ()
    """Label and value."""
    blanks: tuple[str, ...] = ()
    """Labels of blanks to write in."""
    symbol: str = ""
    """What its QR symbol says; none without."""
    bars: str = ""
    """What its Code 128 says; the first character may be the one that marks GS1."""
    under: str = ""
    """What stands below the bars, for people."""
    is_barred: bool = False
    """Whether a border of thick diagonals says from afar that it is not to be used."""
    has_flame: bool = False
    """Whether a diamond with a flame stands on it."""
    statements: tuple[str, ...] = ()
    """Statements, each a sentence."""


class LabelSheetView(Struct, frozen=True):
    """A sheet of equal labels."""

    label: LabelView
    """What each label says."""
    count: int
    """How many labels."""
    frame: Frame
    """Its house, seal and date."""


class PageView(Struct, frozen=True):
    """The page of a lot, for who pours it."""

    product: str
    """What is in the bottle."""
    code: str
    """The lot's code."""
    status: str
    """Where it stands, a sentence."""
    is_barred: bool
    """Whether it must not be served."""
    facts: tuple[tuple[str, str], ...]
    """What there is to know, each with its name."""
    cautions: tuple[str, ...]
    """Warnings, each a sentence."""
    house: tuple[str, ...]
    """The maker, how to reach them, a line each."""
    seal: tuple[str, ...]
    """The three lines of the book's seal."""
    stood: str
    """As of when the book is shown."""
