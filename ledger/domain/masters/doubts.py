"""What the maker's instruments may be off by, and how the maker says otherwise.

Guarantees: half widths of an interval that holds the truth in some 95 of 100 cases; what the maker
does not say is as usual. Kept in one way of writing. Refuses: an instrument it does not know, and a
doubt of everything.
"""

import re
from collections.abc import Mapping
from fractions import Fraction
from functools import partial

from msgspec import Struct

from ledger.domain.amounts.scaled import read_scaled
from ledger.errors import InputError, LedgerError, RefusedError, attempt, together


class Usual(Struct, frozen=True):
    """What is usual of an instrument."""

    half_width: float
    """Half width, in `unit`."""
    unit: str
    """`%` of the figure, or a unit."""
    what: str
    """What it measures, in words."""
    source: str
    """Where that stands."""


USUAL: Mapping[str, Usual] = {
    "cylinder": Usual(
        1.0, "%", "amounts by volume", "class B cylinder of 250 mL, 2 mL (ISO 4788, from memory)"
    ),
    "scale": Usual(0.5, "%", "amounts by weight", "1 g in 200 g (common practice, no source)"),
    "lot-volume": Usual(
        1.0, "%", "the volume of a lot", "as a cylinder; 10 °C are 1.1 % of spirit (OIML R 22)"
    ),
    "label-strength": Usual(0.3, "% vol", "the strength of bought spirit", "27 CFR 19.356(c)"),
    "alcoholmeter": Usual(
        1.0, "% vol", "a strength that was measured", "0.2 to 1 % vol (common practice, no source)"
    ),
    "refractometer": Usual(
        0.5,
        "°Bx",
        "a sugar that was measured",
        "its zero and marks of 0.2 °Bx (common practice, no source)",
    ),
    "hydrometer": Usual(
        0.2, "%", "a density that was measured", "0.002 g/mL (common practice, no source)"
    ),
    "density": Usual(
        0.5, "%", "the density of an oil", "spread of its kind (common practice, no source)"
    ),
    "certificate": Usual(
        10.0,
        "%",
        "the share of a substance in an oil",
        "spread of lots (common practice, no source)",
    ),
}
"""The instruments and papers by their names, each with what is usual of it."""
HOW = f"Write each as NAME=FIGURE, with ; between them: {', '.join(USUAL)}."
"""How doubts are written."""
MOST = 100
"""A doubt of all of a figure leaves nothing to compare."""
_ITEM = re.compile(r"([a-z][a-z -]*?)\s*[=:]\s*([0-9]+(?:[.,][0-9]+)?)\s*(?:% vol|%|°bx)?")


def read_doubts(text: str) -> str:
    """Return what a maker says of the instruments, in the one way it is kept.

    Raises:
        InputError: An instrument is not known, is told twice or without a figure.
        RefusedError: A doubt is as large as what it is a doubt of.

    >>> read_doubts("Scale = 0.1 %; cylinder=2")
    'cylinder=2; scale=0.1'
    """
    errors: list[LedgerError] = []
    told: dict[str, str] = {}
    for piece in filter(str.strip, re.split(r"[;\n\r]", text)):
        found = attempt(errors, partial(_item, piece), None)
        if found and found[0] in told:
            errors.append(InputError(f"{found[0]} is told more than once.", "Write it once."))
        elif found:
            told[found[0]] = found[1]
    if not told and not errors:
        errors.append(InputError("No instrument is told.", HOW))
    if errors:
        raise together(errors)
    return "; ".join(f"{name}={told[name]}" for name in USUAL if name in told)


def doubts(text: str | None) -> Mapping[str, float]:
    """Return the half width of every instrument, of what a book keeps; None: all are usual.

    >>> doubts("scale=0.1")["scale"], doubts(None)["cylinder"]
    (0.1, 1.0)
    """
    told = dict(item.split("=") for item in text.split("; ")) if text else {}
    return {name: float(told.get(name, usual.half_width)) for name, usual in USUAL.items()}


def _item(piece: str) -> tuple[str, str]:
    match = _ITEM.fullmatch(piece.strip().lower())
    if match is None or (name := "-".join(match[1].split())) not in USUAL:
        raise InputError(f'"{piece.strip()}" is not an instrument with its doubt.', HOW)
    figure = Fraction(read_scaled(match[2], 1000, "", "doubt"), 1000)
    if figure >= MOST:
        raise RefusedError(
            f"A doubt of {match[2]} {USUAL[name].unit} of {USUAL[name].what} leaves nothing.",
            f"Write half the width of what it may be off by, below {MOST}.",
        )
    return name, f"{float(figure):.3f}".rstrip("0").rstrip(".")
