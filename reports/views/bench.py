"""What a batch sheet shows, as plain frozen data.

Guarantees: every text is ready to print; each row carries the code by which what is written on it
is typed in afterwards. Refuses: quantities and times that are not words yet.
"""

from msgspec import Struct

from reports.kit.frame import Frame


class SheetRow(Struct, frozen=True):
    """One act to be done and written down."""

    code: str
    """Its code on the sheet, such as A1 or S2."""
    act: str
    """The verb, or the material that goes in."""
    words: str
    """What to do, with its limits."""
    blanks: tuple[str, ...]
    """Labels of the blanks to be filled in."""
    target: str = ""
    """How much of it is asked for."""


class BatchSheetView(Struct, frozen=True):
    """The sheet that a batch is made from."""

    frame: Frame
    """Its house, seal and date."""
    number: str
    """The sheet's number: the code of the lot."""
    title: str
    """What is made."""
    facts: tuple[tuple[str, str], ...]
    """Head facts, label and value."""
    rows: tuple[SheetRow, ...]
    """What goes in and what is done, in the order of the work, and rows to spare."""
    cautions: tuple[str, ...]
    """Warnings, each a sentence."""
    how_to_type: str
    """How what is written is typed in afterwards."""
    across: str = ""
    """A word across it, where it is not the sheet that a batch was begun with."""
