"""What labels show, as plain frozen data.

Guarantees: every text is ready to print. Refuses: quantities, times and codes that are not words
yet.
"""

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


class LabelView(Struct, frozen=True):
    """One bottle label."""

    house_name: str
    """The maker's name."""
    house_address: str | None
    """The maker's address in one line."""
    product: str
    """What is in the bottle."""
    lot: str
    """The lot's code, printed and carried by the QR symbol."""
    volume: str
    """Net volume of one bottle, such as 250 mL."""
    made_on: str
    """The day it was made, ISO."""
    best_before: str | None
    """The best-before day, ISO; None when none is known."""
    dilution: str | None
    """How to dilute it, in one line."""
    text: str | None
    """What the formula's label says besides."""
    cautions: tuple[str, ...]
    """Warnings, each a sentence."""
    strength: str | None = None
    """Strength as it was made, such as alc. 2.6 % vol; None when there is none to say."""
    statements: tuple[str, ...] = ()
    """Statements that the contents call for, each a sentence."""
    declared: tuple[Declared, ...] = ()
    """What it declares besides; where there is no room the last is cut to its least first."""
    is_small: bool = False
    """Whether the bottle is so small that its words may be smaller."""
    across: str | None = None
    """A word across it, where it is for no bottle that leaves."""


class LabelSheetView(Struct, frozen=True):
    """A sheet of equal labels."""

    label: LabelView
    """What each label says."""
    count: int
    """How many labels."""
    frame: Frame
    """Its house, seal and date."""
