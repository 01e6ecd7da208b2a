"""Frozen data with something in every field, so that one that is lost or taken for another shows.

Guarantees: what is filled twice is filled alike; no two words and no two numbers of one filling are
the same, and a word is the name of its field with a number. Bare, whatever may be absent is.
Refuses: to know which figures fit each other; what must, is given.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import is_dataclass
from datetime import UTC, date, datetime, timedelta
from enum import Enum
from fractions import Fraction
from itertools import count, cycle
from pathlib import Path
from types import NoneType, UnionType
from typing import Any, TypeVar, Union, get_args, get_origin, get_type_hints

from msgspec import Struct

T = TypeVar("T")
BEGIN = datetime(2026, 3, 1, 9, tzinfo=UTC)
TEXTS = {"on": "2026-03-04", "last_sent": "2026-03-05"}
"""Fields of text that are read as something else."""


def filled(kind: type[T], **given: Any) -> T:
    """Return a frozen class with something in every field.

    Args:
        kind: The class; one that takes a parameter is given with it.
        given: Values of fields, wherever they are met, by name.

    >>> from ledger.service.lots.trace import Carried
    >>> filled(Carried, amount=5)
    Carried(source='source 1001', target='target 1002', amount=5, measure=<Measure.UL: 'uL'>)
    """
    whole: T = _Filler(TEXTS | given, is_bare=False).value(kind, "", {})
    return whole


def bare(kind: type[T], **given: Any) -> T:
    """Return a frozen class with nothing where there may be nothing, and no where yes may be."""
    whole: T = _Filler(TEXTS | given, is_bare=True).value(kind, "", {})
    return whole


class _Filler:
    def __init__(self, given: Mapping[str, Any], *, is_bare: bool) -> None:
        self._given, self._is_bare = given, is_bare
        self._numbers = count(1001)
        self._turns: dict[type, Any] = {}

    def value(self, kind: Any, name: str, known: Mapping[Any, Any]) -> Any:
        """Return a value of a type for a field, with what its parameters stand for."""
        if name in self._given:
            return self._given[name]
        kind = known.get(kind, kind)
        whole, parts = get_origin(kind) or kind, get_args(kind)
        if whole in (Union, UnionType):
            return self._either(parts, name, known)
        if issubclass(whole, Enum):
            return next(self._turns.setdefault(whole, cycle(whole)))
        if issubclass(whole, Struct) or is_dataclass(whole) or hasattr(whole, "_fields"):
            return self._whole(whole, [known.get(part, part) for part in parts])
        if issubclass(whole, Mapping):
            return {self.value(parts[0], name, known): self.value(parts[1], name, known)}
        if issubclass(whole, Sequence | frozenset) and whole not in PLAIN:
            return self._many(whole, parts, name, known)
        return PLAIN[whole](next(self._numbers), name, not self._is_bare)

    def _either(self, parts: Sequence[Any], name: str, known: Mapping[Any, Any]) -> Any:
        if self._is_bare and NoneType in parts:
            return None
        return self.value(next(part for part in parts if part is not NoneType), name, known)

    def _many(self, whole: Any, parts: Any, name: str, known: Mapping[Any, Any]) -> Any:
        made = frozenset if whole is frozenset else tuple
        if whole is tuple and parts[-1] is not Ellipsis:
            return made(self.value(part, name, known) for part in parts)
        return made(self.value(parts[0], name, known) for _ in range(0 if self._is_bare else 2))

    def _whole(self, whole: Any, parts: Sequence[Any]) -> Any:
        known = dict(zip(getattr(whole, "__parameters__", ()), parts, strict=False))
        names = whole._fields if hasattr(whole, "_fields") else whole.__match_args__
        hints = get_type_hints(whole)
        return whole(**{name: self.value(hints[name], name, known) for name in names})


PLAIN: Mapping[type, Callable[[int, str, bool], Any]] = {
    str: lambda number, name, _: f"{name} {number}",
    int: lambda number, *_: number,
    float: lambda number, *_: number / 8,
    Fraction: lambda number, *_: Fraction(number, 7),
    bool: lambda _number, _name, is_so: is_so,
    bytes: lambda number, *_: number.to_bytes(32, "big"),
    Path: lambda number, name, _: Path(f"{name} {number}"),
    date: lambda number, *_: (BEGIN + timedelta(days=number)).date(),
    datetime: lambda number, *_: BEGIN + timedelta(hours=number),
}
"""What is made of a number and the name of a field."""
