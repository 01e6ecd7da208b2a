"""Layouts of labels: where they stand on a sheet or a roll, read from data.

Guarantees: a layout that is taken stands inside its page; what is wrong with a file is told all at
once, with the layout it is in. Refuses: a layout larger than its page, and one without labels.
"""

import tomllib
from collections.abc import Iterator, Mapping
from functools import cache
from importlib.resources import files

import msgspec
from msgspec import Struct
from reportlab.lib.pagesizes import A4, LETTER
from reportlab.lib.units import mm

from ledger.errors import InputError, RefusedError
from reports.kit.frame import PageSize

PAGES = {"A4": A4, "Letter": LETTER}
"""Pages by name, in points."""
DPIS = (203, 300, 600)
"""What label printers and others print."""
PANELS = (1, 2)
"""Panels that a bottle's label may have: all in one, or front and back."""
USUAL = "2x6"
"""The layout that is taken where none is named, on A4."""
USUAL_ON: dict[PageSize, str] = {"A4": USUAL, "Letter": "letter-2x5"}
"""The same by the sheets that the house prints on."""
MOST_MM = 2000.0
"""The longest page."""
MOST_LABELS = 1000
"""The most labels on one page."""
_A_HAIR = 1e-6


class Plate(Struct, frozen=True):
    """One label between its edges, in points."""

    width: float
    height: float
    dpi: int = 300
    """Dots an inch, of which symbols take whole ones."""

    @property
    def padding(self) -> float:
        """What stays blank inside the edges."""
        return (3.0 if self.height >= SMALL_HEIGHT else 2.0) * mm

    @property
    def inner(self) -> float:
        """Width for words."""
        return self.width - 2 * self.padding

    @property
    def room(self) -> float:
        """Height for words."""
        return self.height - 2 * self.padding

    @property
    def symbol(self) -> float:
        """Side of the square for the QR symbol."""
        return min(17.0 * mm, 0.45 * self.height)

    @property
    def size(self) -> str:
        """Its size in words."""
        return f"{self.width / mm:.4g} by {self.height / mm:.4g} mm"


SMALL_HEIGHT = 35.0 * mm
"""Labels lower than this have a narrower margin."""


class Layout(Struct, frozen=True, forbid_unknown_fields=True):
    """Where labels stand; lengths in millimetres."""

    name: str
    """What it is called."""
    page: str | tuple[float, float]
    """The page: A4, Letter, or its width and length."""
    across: int
    """Labels side by side."""
    down: int
    """Labels one below the other."""
    width: float
    """Width of a label."""
    height: float
    """Height of a label."""
    left: float = 0.0
    """From the edge to the first label."""
    top: float = 0.0
    """From the upper edge to the first label."""
    gap: tuple[float, float] = (0.0, 0.0)
    """Between two labels, across and down."""
    cut: bool = False
    """Whether they are cut apart."""
    dpi: int = 300
    """Dots an inch of the printer."""
    panels: int = 1
    """Panels that a bottle's label has: 1, or 2 for front and back."""
    words: str = ""
    """What it is, for people."""

    @property
    def plate(self) -> Plate:
        """One label of it."""
        return Plate(self.width * mm, self.height * mm, self.dpi)

    @property
    def page_points(self) -> tuple[float, float]:
        """The page in points."""
        if isinstance(self.page, str):
            return PAGES[self.page]
        return self.page[0] * mm, self.page[1] * mm

    @property
    def per_page(self) -> int:
        """Labels on a page."""
        return self.across * self.down

    @property
    def below(self) -> float:
        """What is left below the last label, in points."""
        high = self.top + self.down * self.height + (self.down - 1) * self.gap[1]
        return self.page_points[1] - high * mm

    def place(self, number: int) -> tuple[float, float]:
        """Return the lower left corner of a label by its number, counted from 0, in points."""
        row, column = divmod(number, self.across)
        x = self.left + column * (self.width + self.gap[0])
        y = self.top + row * (self.height + self.gap[1]) + self.height
        return x * mm, self.page_points[1] - y * mm


@cache
def shipped_layouts() -> Mapping[str, Layout]:
    """Return the layouts that come with pottle, by name."""
    text = (files("reports.pdf.goods") / "layouts.toml").read_text(encoding="utf-8")
    return read_layouts(text, "layouts.toml")


def read_layouts(text: str, file: str) -> Mapping[str, Layout]:
    """Read layouts from a text, by name.

    Args:
        text: TOML with a table `layout` each.
        file: The file's name, for errors.

    Raises:
        InputError: It is no such file, or a layout is wrong: all that is wrong with each.
    """
    again = f"Mend {file}; pottle guide labels shows how a layout is written."
    try:
        rows = tomllib.loads(text).get("layout", [])
        layouts = msgspec.convert(rows, list[Layout])
    except (tomllib.TOMLDecodeError, msgspec.ValidationError) as error:
        raise InputError(f"{file} holds no layouts that can be read: {error}.", again) from error
    problems = [problem for layout in layouts for problem in _faults(layout)]
    if problems:
        raise InputError.of([(problem, again) for problem in problems])
    if not layouts:
        raise InputError(f"{file} holds no layout.", again)
    return {layout.name: layout for layout in layouts}


def _faults(layout: Layout) -> Iterator[str]:
    """Yield what is wrong with a layout, a sentence each."""
    called = f"The layout {layout.name}"
    if isinstance(layout.page, str) and layout.page not in PAGES:
        yield f'{called} is on a page "{layout.page}"; it may be A4, Letter or [width, length].'
        return
    if min(layout.across, layout.down) < 1 or layout.per_page > MOST_LABELS:
        yield f"{called} has {layout.across} by {layout.down} labels; 1 to {MOST_LABELS} may be."
        return
    if layout.panels not in PANELS:
        yield f"{called} has {layout.panels} panels a label; 1 may be, or 2 for front and back."
    if layout.dpi not in DPIS:
        yield f"{called} is for {layout.dpi} dpi; printers have 203, 300 or 600."
    if min(layout.width, layout.height) <= 0 or min(layout.left, layout.top, *layout.gap) < 0:
        yield f"{called} has a length below 0, or a label without a size."
        return
    page_wide, page_long = (side / mm for side in layout.page_points)
    if max(page_wide, page_long) > MOST_MM:
        yield f"{called} has a page longer than {MOST_MM:.0f} mm."
    wide = layout.left + layout.across * layout.width + (layout.across - 1) * layout.gap[0]
    if wide > page_wide + _A_HAIR:
        yield f"{called} is {wide:.4g} mm wide, and its page {page_wide:.4g} mm."
    if layout.below < -_A_HAIR:
        high = page_long - layout.below / mm
        yield f"{called} is {high:.4g} mm high, and its page {page_long:.4g} mm."


def layout_called(name: str, known: Mapping[str, Layout]) -> Layout:
    """Return a layout by its name.

    Raises:
        RefusedError: There is none of that name.
    """
    if name not in known:
        raise RefusedError(
            f'There is no layout called "{name}".', f"Give one of: {', '.join(known)}."
        )
    return known[name]
