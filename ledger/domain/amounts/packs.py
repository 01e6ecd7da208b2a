"""Packs: so many containers of one size, as in "15 x 250 mL".

Guarantees: a pack read holds at least one container, its size is a volume, and all of it
together is no more than the book holds. Refuses everything else.
"""

import re

from msgspec import Struct

from ledger.domain.amounts.numerals import fold_text
from ledger.domain.amounts.quantity import MOST, Measure, Quantity, parse_quantity
from ledger.errors import InputError, RefusedError

_PACK = re.compile(r"([^x×X]*)[x×X](.*)")
_WHOLE = re.compile(r"[-−–]?[0-9]+")


class Pack(Struct, frozen=True):
    """So many containers of one size."""

    count: int
    """How many containers; at least 1."""
    size: Quantity
    """The volume that each of them holds."""


def parse_pack(text: str, *, fluid_ounce: str = "US") -> Pack:
    """Read a count and a size, parted by "x" or "×".

    Args:
        text: What was written.
        fluid_ounce: Whose a bare "fl oz" is: "US" or "imperial".

    Raises:
        InputError: The text is not a count and a volume, or is more than the book holds.
        RefusedError: The count or the size is zero or negative.

    >>> parse_pack("15 x 250mL").count
    15
    """
    written = fold_text(text)
    match = _PACK.fullmatch(written)
    if not match:
        raise InputError(
            f'"{written}" is not a pack, because it has no x between a count and a size.',
            "Write a count, x and a size, such as 15 x 250 mL.",
        )
    count = _read_count(match[1].strip(), written)
    size = parse_quantity(match[2], fluid_ounce=fluid_ounce)
    if size.measure is not Measure.UL:
        raise InputError(
            f"The size of a container must be a volume, and {size.written} is not.",
            "Write the size in mL, L or fl oz.",
        )
    if count * size.amount > MOST:
        raise InputError(
            f"{written} is more than the book holds: at most {MOST // 10**6} L.",
            "Check the count and the size.",
        )
    return Pack(count, size)


_CASES = re.compile(r"([0-9]+)\s*[x×X]\s*([0-9]+)")
MOST_CASES = 100_000
"""The most cases, and the most bottles in one, that are told at once."""


def parse_cases(text: str) -> tuple[int, int]:
    """Read how many cases, and how many bottles stand in each, parted by "x" or "×".

    Raises:
        InputError: The text is not two whole numbers, or they are too large.

    >>> parse_cases("4 x 12")
    (4, 12)
    """
    written = fold_text(text) if text.strip() else ""
    match = _CASES.fullmatch(written)
    if not match or max(map(int, match.groups())) > MOST_CASES:
        raise InputError(
            f'"{written}" is not a number of cases and a number of bottles in each.',
            f"Write both with an x between, such as 4 x 12, neither above {MOST_CASES}.",
        )
    return int(match[1]), int(match[2])


def _read_count(text: str, written: str) -> int:
    if not _WHOLE.fullmatch(text):
        raise InputError(
            f'The count of a pack must be a whole number, and "{text}" in {written} is not.',
            "Write a count, x and a size, such as 15 x 250 mL.",
        )
    if not text[0].isdigit() or int(text) < 1:
        raise RefusedError(
            f"The count of a pack must be at least 1, and {text} is not.",
            "Write how many there really were.",
        )
    return int(text)
