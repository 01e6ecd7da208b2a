"""What a paper or a screen shows, as plain frozen data.

Guarantees: every text is ready to print, every list in the order it is shown; renderings add
layout only. Refuses: quantities, times and codes that are not words yet.
"""

from msgspec import Struct

from reports.kit.frame import Frame
from reports.views.goods import LabelView


class InputRow(Struct, frozen=True):
    """One lot that went into the lot on record."""

    lot: str
    """Its code."""
    what: str
    """What it is, with the supplier and the supplier's lot where known."""
    amount: str
    """How much went in, as recorded."""
    when: str
    """When, local time."""
    by: str
    """Initials."""
    entry: str
    """Entry number."""
    struck: bool
    """Whether the entry is no longer in force."""


class StepRow(Struct, frozen=True):
    """One entry, as the batch record shows it."""

    entry: str
    """Entry number."""
    when: str
    """When it happened, local time with its precision."""
    what: str
    """The verb of the bench."""
    words: str
    """What it says."""
    by: str
    """Initials."""
    notes: tuple[str, ...]
    """Late, corrected by, reason and so on, each a short sentence."""
    struck: bool
    """Whether it is no longer in force: printed struck through, still legible."""


class RecordView(Struct, frozen=True):
    """The record of one lot."""

    frame: Frame
    """Its house, seal and date."""
    lot: str
    """The lot's code, also carried by the QR symbol."""
    title: str
    """What the lot is."""
    facts: tuple[tuple[str, str], ...]
    """Head facts, label and value: kind, begun, status, on hand and so on."""
    inputs: tuple[InputRow, ...] | None
    """What went into it; None where nothing ever does."""
    steps: tuple[StepRow, ...]
    """Every entry about it, in order."""
    looks: tuple[StepRow, ...]
    """Looks and measurements, in order."""
    balance: tuple[tuple[str, str], ...] | None
    """Yield and loss: label and value; None where nothing is made."""
    went_to: tuple[tuple[str, str, str], ...]
    """Where it went: lot or party, what, amount."""
    deviations: tuple[StepRow, ...]
    """Deviations with their reasons."""
    cautions: tuple[str, ...]
    """Warnings that go with what is in it, each a sentence."""
    paper: str = "Batch record"
    """What kind of record it is."""
    status: str = ""
    """Where the lot stands."""
    around: tuple[tuple[str, str], ...] = ()
    """People, vessels with their cleaning, instruments with their check: label and words."""
    specimen: LabelView | None = None
    """A label of it, for a packed lot, with a word across."""


class TraceRow(Struct, frozen=True):
    """One line of a trace."""

    depth: int
    """How many steps from the lot traced, 1 for the next."""
    lot: str
    """Code of the lot; empty where goods left the house."""
    what: str
    """What it is; where goods left the house, who has them and by which document."""
    amount: str
    """How much went between, or out."""
    share: str
    """How much of one is in the other."""
    status: str
    """Where it stands, and the grade of the last look; the day on which goods went."""
    became: str = ""
    """What became of goods: sold to, came back from, still here."""
    is_held: bool = False
    """Whether somebody has the goods, or they are still here."""


class TraceView(Struct, frozen=True):
    """The trace of one lot."""

    frame: Frame
    """Its house, seal and date."""
    lot: str
    """Code of the lot traced."""
    title: str
    """What it is."""
    back: tuple[TraceRow, ...] | None
    """What it is made of; None when not asked for."""
    forward: tuple[TraceRow, ...] | None
    """What became of it; None when not asked for."""
    notes: tuple[str, ...]
    """What a reader must know besides, each a sentence."""
    status: str = ""
    """Where the lot stands."""
