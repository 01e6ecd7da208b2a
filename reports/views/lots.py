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
    target: str = ""
    """How much the formula asks for."""
    limits: str = ""
    """From where to where it may be."""
    off: str = ""
    """How far the amount is from the target."""
    checked: str = ""
    """Initials of who checked it."""


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
    asked: str = ""
    """What the formula asks of it."""
    departures: tuple[str, ...] = ()
    """What should not have happened in it, each with its reason and who let it be."""


class TimeSpan(Struct, frozen=True):
    """One act on the bar of a batch's time."""

    sort: str
    """What it was: macerate, chill, filter, look."""
    start: float
    """Where it begins, from 0 at the left to 1 at the right."""
    end: float
    """Where it ends; the same for what took no time that is told."""


class TimeBar(Struct, frozen=True):
    """How the time of a batch went."""

    spans: tuple[TimeSpan, ...]
    """What was done, in order."""
    ticks: tuple[tuple[float, str], ...]
    """Places along the bar with their days."""


class ClarityPoint(Struct, frozen=True):
    """One look with a reading."""

    along: float
    """Where it stands along its days, from 0 to 1."""
    up: float
    """How turbid it was on the scale, from 0 to 1."""
    words: str
    """The reading."""


class ClarityStrip(Struct, frozen=True):
    """How clear a lot was over its days, turbidity on a logarithmic scale."""

    points: tuple[ClarityPoint, ...]
    """Its looks with a reading."""
    days: tuple[tuple[float, str], ...]
    """Places along with their days."""
    scale: tuple[tuple[float, str], ...]
    """Places up with their NTU."""
    wanted_to: float | None
    """Up to where it is as wanted; None when no figure says so."""
    words: str
    """What is shaded, and by which source."""


class LookRow(Struct, frozen=True):
    """One look."""

    entry: str
    """Entry number."""
    when: str
    """When, local time."""
    age: str
    """How old it was."""
    seen: str
    """What was looked at."""
    grade: str
    """The word for it."""
    ntu: str
    """The reading."""
    words: str
    """What else was seen."""
    by: str
    """Initials."""
    struck: bool
    """Whether it is no longer in force."""


class LadderRow(Struct, frozen=True):
    """One rung from what went in to what came out."""

    sign: str
    """Plus, minus, or equals."""
    what: str
    """What it is."""
    amount: str
    """How much."""
    share: str
    """In per cent of what went in."""
    is_sum: bool = False
    """Whether it is what is left of all above."""


class GateRow(Struct, frozen=True):
    """One thing that a release asks."""

    is_met: bool | None
    """Whether it is so; None where nothing says."""
    asked: str
    """What is asked."""
    words: str
    """What is so."""


class NeighbourRow(Struct, frozen=True):
    """One step back or forward."""

    who: str
    """The lot, or who has it."""
    what: str
    """What it is; the supplier and their lot, or how it went."""
    on: str
    """The day."""
    amount: str
    """How much."""
    where: str
    """The address."""


class Band(Struct, frozen=True):
    """Where the lot stands, across the page."""

    status: str
    """In one word, such as RELEASED."""
    words: str
    """Since when and by whom."""
    is_dark: bool
    """Whether nobody may use or send it as it stands."""


class RecordView(Struct, frozen=True):
    """The record of one lot."""

    frame: Frame
    """Its house, seal and date."""
    lot: str
    """The lot's code, also carried by the QR symbol."""
    title: str
    """What the lot is."""
    band: Band
    """Where it stands."""
    facts: tuple[tuple[str, str], ...]
    """Head facts, label and value: kind, begun, on hand and so on."""
    inputs: tuple[InputRow, ...] | None
    """What went into it; None where nothing ever does."""
    made: tuple[StepRow, ...]
    """Every entry until it was made, in order."""
    since: tuple[StepRow, ...]
    """Every entry after that, in order."""
    looks: tuple[LookRow, ...]
    """Its looks, in order."""
    ladder: tuple[LadderRow, ...]
    """From what went in to what came out; empty where nothing is made."""
    back: tuple[NeighbourRow, ...]
    """What it was made of, one step back."""
    forward: tuple[NeighbourRow, ...]
    """Where it went, one step forward."""
    cautions: tuple[str, ...]
    """Warnings that go with what is in it, each a sentence."""
    paper: str = "Batch record"
    """What kind of record it is."""
    bar: TimeBar | None = None
    """How its time went; None where too little of it is told."""
    clarity: ClarityStrip | None = None
    """Its turbidity over its days; None below two readings."""
    gate: tuple[GateRow, ...] = ()
    """What a release asks; empty for what nobody releases."""
    serving: tuple[tuple[str, str], ...] = ()
    """What a glass of it delivers, label and value."""
    people: tuple[tuple[str, str, str], ...] = ()
    """Who wrote in it: initials, name, role."""
    around: tuple[tuple[str, str], ...] = ()
    """Vessels with their cleaning, instruments with their check: label and words."""
    labels: tuple[tuple[str, str], ...] = ()
    """What became of its labels, label and value."""
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
