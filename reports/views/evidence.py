"""What the packet for an inspector shows, as plain frozen data.

Guarantees: every text is ready to print, every list in the order it is shown.
"""

from msgspec import Struct

from reports.kit.frame import Frame
from reports.views.glass import SpiritView
from reports.views.lots import RecordView


class EntryRow(Struct, frozen=True):
    """One entry as it was written."""

    entry: str
    """Entry number."""
    when: str
    """When it happened, local time."""
    lot: str
    """The lot it is about; nothing for the house."""
    what: str
    """The verb of the bench."""
    words: str
    """What it says."""
    by: str
    """Initials."""
    notes: tuple[str, ...]
    """Late, corrected by, reason and so on, each a short sentence."""
    struck: bool
    """Whether it is no longer in force."""


class PacketView(Struct, frozen=True):
    """The packet of a lot or a period."""

    frame: Frame
    """Its house, seal and date."""
    code: str
    """The lot, or the days."""
    title: str
    """What that is."""
    records: tuple[RecordView, ...]
    """The record of each lot."""
    spirit: SpiritView
    """The spirit account of its days."""
    upkeep: tuple[EntryRow, ...]
    """Cleaning and instruments."""
    complaints: tuple[EntryRow, ...]
    """Complaints, recalls, and what became of them."""
    entries: tuple[EntryRow, ...]
    """Every entry as it was written."""
    people: tuple[tuple[str, str, str], ...]
    """Everybody who writes in the book: initials, name, role."""
