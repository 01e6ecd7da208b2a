"""Constituents as a certificate lists them, with semicolons, commas or new lines between.

Guarantees: a comma is a decimal comma, part of a name or between two constituents as the text alone
allows; what can be read in two ways is refused with both. Refuses: a constituent without its share,
and a substance that is told twice.
"""

import re
from collections.abc import Sequence
from functools import partial
from typing import NamedTuple

from ledger.domain.amounts.scaled import read_scaled
from ledger.domain.entries.masters import Constituent
from ledger.domain.entries.texts import read_text
from ledger.domain.masters.substances import Substances
from ledger.errors import InputError, LedgerError, attempt, together

HOW = "Write each as NAME SHARE%, with ; between them."
"""How constituents are written."""
MOST_COMMAS = 6
"""The most commas that are looked for in one constituent."""
_ITEM = re.compile(r"(.*\S)[\s:]\s*([0-9]+(?:[.,][0-9]+)?) ?%?", re.DOTALL)
_CAS = re.compile(r"[0-9]{2,7}-[0-9]{2}-[0-9]")
_NO_NAME = re.compile(r"[\W\d_]+")
_LOOSE_COMMA = re.compile(r"(?<![0-9]),|,(?![0-9])")


class Told(NamedTuple):
    """A constituent as it is written."""

    name: str
    share: str

    def __str__(self) -> str:
        """Say it."""
        return f"{self.name} {self.share.replace(',', '.')} %"


def read_constituents(text: str, substances: Substances) -> tuple[Constituent, ...]:
    """Return the constituents that a text lists, each by its common name.

    Raises:
        InputError: One has no share, the text can be read in two ways, or a substance is told
            twice. All that is wrong is told at once.
    """
    errors: list[LedgerError] = []
    told: list[Told] = []
    for part in re.split(r"[;\n\r]", text):
        told += attempt(errors, partial(_one_reading, part, substances), ())
    found = [attempt(errors, partial(_constituent, item, substances), None) for item in told]
    if not errors:
        errors += _repeated(told, substances)
    if errors:
        raise together(errors)
    return tuple(item for item in found if item)


def _constituent(told: Told, substances: Substances) -> Constituent:
    name = read_text(told.name, "name of the constituent")
    return Constituent(substances.same(name) or name, read_scaled(told.share, 10_000, "%", "share"))


def _one_reading(text: str, substances: Substances) -> Sequence[Told]:
    pieces = text.split(",")
    found = _readings(pieces, substances)
    if len(found) == 1:
        return found[0]
    if not found:
        raise InputError(
            f'"{_unread(pieces, substances)}" is not a constituent with its share.', HOW
        )
    one, other = (" and ".join(map(str, reading)) for reading in found)
    raise InputError(
        f'"{text.strip()}" can be read as {one}, or as {other}.',
        "Write ; between the constituents, and a point in their shares.",
    )


def _readings(pieces: Sequence[str], substances: Substances) -> list[tuple[Told, ...]]:
    """Return how a text can be read that is parted at its commas: at most two ways."""
    from_here: list[list[tuple[Told, ...]]] = [[()]]
    for start in range(len(pieces) - 1, -1, -1):
        found = list(from_here[0]) if not pieces[start].strip() else []
        for count, rest in enumerate(from_here[: MOST_COMMAS + 1], start=1):
            item = _item(",".join(pieces[start : start + count]), substances)
            found += [(item, *reading) for reading in rest] if item else []
        from_here.insert(0, found[:2])
    return from_here[0]


def _item(piece: str, substances: Substances) -> Told | None:
    """Return the constituent that a piece is as a whole, or None."""
    match = _ITEM.fullmatch(piece.strip())
    if match is None:
        return None
    name = match[1].rstrip(":").strip()
    if substances.knows(name) or _CAS.fullmatch(name):
        return Told(name, match[2])
    words = name.split()
    if any(_NO_NAME.fullmatch(word) for word in words) or re.search(r"[%<>]", name):
        return None
    return None if not words or _LOOSE_COMMA.search(name) else Told(name, match[2])


def _unread(pieces: Sequence[str], substances: Substances) -> str:
    """Return the first piece with which no constituent begins, of a text that cannot be read."""
    start = 0
    while True:
        counts = range(min(len(pieces) - start, MOST_COMMAS + 1), 0, -1)
        longest = next(
            (n for n in counts if _item(",".join(pieces[start : start + n]), substances)), 0
        )
        if not longest and (piece := pieces[start].strip()):
            return piece
        start += longest or 1


def _repeated(told: Sequence[Told], substances: Substances) -> list[LedgerError]:
    """Return what is wrong with substances that are told more than once."""
    by_name: dict[str, list[Told]] = {}
    for item in told:
        by_name.setdefault(substances.counted_as(item.name), []).append(item)
    return [
        InputError(
            f"{name} is told more than once: {' and '.join(map(str, items))}.",
            "Write it once with all of it, or each of its kinds once.",
        )
        for name, items in by_name.items()
        if _is_repeated(items, substances)
    ]


def _is_repeated(items: Sequence[Told], substances: Substances) -> bool:
    keys = {substances.same(item.name) or item.name.lower() for item in items}
    whole = any(substances.same(item.name) for item in items)
    return len(keys) < len(items) or (whole and len(items) > 1)
