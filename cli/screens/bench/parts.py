"""What a line at the bench is read beside, and what it says.

Guarantees: frozen data; whoever reads a line asks neither the book nor a terminal.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Usual:
    """A pass as it was made last, or as the formula asks for it."""

    said: str
    """Whence it is known, such as "as the pass before"."""
    medium: str | None = None
    """What it ran through."""
    pore: str | None = None
    """Its pores in µm."""
    vacuum: str | None = None
    """Its vacuum in kPa."""
    is_absolute: bool = False
    """Whether that counts from nothing."""


@dataclass(frozen=True, slots=True)
class Bench:
    """What a line is read beside: the lot in hand, and what the book knows of words."""

    lot: str | None = None
    """Code of the lot in hand."""
    materials: Mapping[str, str] = field(default_factory=dict)
    """The kind of each material by its short name."""
    called: frozenset[str] = frozenset()
    """The materials that the formula of the lot in hand calls for."""
    commands: frozenset[str] = frozenset()
    """The names of all commands."""
    unit_of: Callable[[str], str | None] = lambda _: None
    """Returns what a lot, or the lots of a material, are counted in; None where there are none."""
    usual: Usual = Usual("")
    """The pass that a filtering is like where nothing else is said."""
    liquid: str | None = None
    """The lot that it is rinsed and made up with: the spirit that was added last."""
    is_resting: bool = False
    """Whether a rest of the lot in hand goes on."""
    source: str | None = None
    """A lot that was named before, and of which the amount comes now."""


@dataclass(frozen=True, slots=True)
class Act:
    """A line that is a command."""

    words: tuple[str, ...]
    """The words of the command."""
    notes: tuple[str, ...] = ()
    """What was filled in, a sentence each."""
    ends_rest: bool = False
    """Whether a rest that goes on is to be ended before it."""
    lasts: str | None = None
    """How long a rest is to last, as written."""
    is_again: bool = False
    """Whether it is said that the same is done again."""


@dataclass(frozen=True, slots=True)
class Named:
    """A line that only names a lot or a material."""

    text: str
    """As it was written."""
    material: str | None = None
    """The material's short name."""


@dataclass(frozen=True, slots=True)
class Pick:
    """A line that takes an offered step."""

    number: int
    """Its number."""
    words: tuple[str, ...] = ()
    """What is filled in for its capitals."""


@dataclass(frozen=True, slots=True)
class Plain:
    """A line for the session itself: undo, help, done."""

    what: str
    """Which."""


Line = Act | Named | Pick | Plain
