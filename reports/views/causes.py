"""What a comparison of a trial shows, as plain frozen data.

Guarantees: every text is ready to print, every list in the order it is shown; a plot is places
along a line, so that a screen and a paper draw the same. Refuses: quantities that are not words
yet.
"""

from msgspec import Struct

from reports.kit.frame import Frame


class LevelRow(Struct, frozen=True):
    """The batches at one level of a factor."""

    level: str
    """The level."""
    n: str
    """How many batches."""
    looks: tuple[str, ...]
    """Best and worst grade at each age shown."""
    ntu: str
    """Mean turbidity, NTU."""
    yield_pct: str
    """Mean yield, per cent."""


class FactorView(Struct, frozen=True):
    """A factor: its levels, or why none are shown."""

    name: str
    """Its name."""
    rows: tuple[LevelRow, ...]
    """Its levels and the control; empty when it is confounded."""
    words: str
    """What the levels come to, or what it cannot be told from."""


class PlotRow(Struct, frozen=True):
    """One line of a plot."""

    label: str
    """Which batches."""
    places: tuple[float, ...]
    """Where each batch stands, from 0 at the left to 1 at the right."""


class PlotView(Struct, frozen=True):
    """A plot of one response: a dot a batch."""

    title: str
    """Which response, by which factor."""
    left: str
    """What the left end of the line stands for."""
    right: str
    """What the right end stands for."""
    rows: tuple[PlotRow, ...]
    """Its lines."""
    limits: tuple[float, ...] = ()
    """Where limits stand on every line, from 0 at the left to 1 at the right."""


class Course(Struct, frozen=True):
    """How something went from batch to batch, with its limits."""

    title: str
    """What goes."""
    places: tuple[float | None, ...]
    """Where each batch stands, from 0 at the foot to 1 at the top; None where it has no figure."""
    limits: tuple[tuple[float, str], ...]
    """Where the mean stands, and then each limit, with their words."""
    outside: tuple[tuple[int, str], ...]
    """Which batches lie outside, with their words."""


class ControlView(Struct, frozen=True):
    """A control chart: batches from left to right, below how far each is from the one before."""

    names: tuple[str, ...]
    """Which batches, with their days."""
    figures: Course
    """The figures."""
    ranges: Course
    """How far each is from the one before."""


class FigureView(Struct, frozen=True):
    """One figure of batch after batch."""

    title: str
    """What it is, with its unit."""
    words: tuple[str, ...]
    """What it does, a line each."""
    plot: PlotView | None
    """Its plot; None where there are too few."""
    control: ControlView | None = None
    """Its control chart; None where there are too few."""


class ChartView(Struct, frozen=True):
    """How the batches of a product or of a kind turned out."""

    frame: Frame
    """Its house, seal and date."""
    of: str
    """The product or the kind."""
    lines: tuple[str, ...]
    """What is said of all of them, a paragraph each."""
    figures: tuple[FigureView, ...]
    """Each figure, and last the time until haze."""


class BatchRow(Struct, frozen=True):
    """One batch of the trial."""

    lot: str
    """Its code."""
    settings: str
    """Its levels, or that it is the control."""
    look: str
    """Last grade."""
    ntu: str
    """Last turbidity, NTU."""
    yield_pct: str
    """Yield, per cent."""
    is_front: bool
    """Whether no other batch beats it."""


class ScatterPoint(Struct, frozen=True):
    """One batch of a scatter."""

    along: float
    """Where it stands along, from 0 to 1."""
    up: float
    """Where it stands up, from 0 to 1."""
    words: str
    """Which batch."""
    is_control: bool
    """Whether it is the control: drawn hollow."""


class Scatter(Struct, frozen=True):
    """Turbidity against loss, a dot a batch."""

    points: tuple[ScatterPoint, ...]
    """Its batches."""
    along: tuple[tuple[float, str], ...]
    """Ticks of the loss."""
    up: tuple[tuple[float, str], ...]
    """Ticks of the turbidity."""


class ComparisonView(Struct, frozen=True):
    """A trial, compared."""

    frame: Frame
    """Its house, seal and date."""
    group: str
    """The trial's name."""
    lines: tuple[str, ...]
    """What a maker should know first, a paragraph each."""
    ages: tuple[str, ...]
    """Ages whose grades are shown."""
    factors: tuple[FactorView, ...]
    """Its factors."""
    plots: tuple[PlotView, ...]
    """Plots of the responses by factor."""
    batches: tuple[BatchRow, ...]
    """Its batches, the clearest first."""
    front: str
    """Which batches no other beats on clarity and loss together."""
    outcome: tuple[str, ...]
    """What its plan comes to, a paragraph each; empty where none was made."""
    scatter: Scatter | None = None
    """Turbidity against loss; None below two batches with both."""


class JarRow(Struct, frozen=True):
    """One jar of a planned trial."""

    number: str
    """Its place in the order in which jars are made."""
    mark: str
    """What is written on it."""
    levels: tuple[str, ...]
    """Its level of each factor, in the order of the heads."""


class EveningRows(Struct, frozen=True):
    """The jars of one evening."""

    title: str
    """Which evening."""
    jars: tuple[JarRow, ...]
    """Its jars in the order in which they are made."""


class TrialSheetView(Struct, frozen=True):
    """The sheet of a planned trial: one part for who makes the jars, one for who looks at them."""

    frame: Frame
    """Its house, seal and date."""
    name: str
    """The trial's name."""
    lines: tuple[str, ...]
    """What is tried and how large it is, a paragraph each."""
    heads: tuple[str, ...]
    """The factors."""
    evenings: tuple[EveningRows, ...]
    """Its evenings."""
    marks: tuple[str, ...]
    """The marks of all jars in the order of their digits, which tells nothing of the jars."""
    ages: tuple[str, ...]
    """Ages at which they are looked at."""
    how_to_type: str
    """How what is written down gets into the book."""
