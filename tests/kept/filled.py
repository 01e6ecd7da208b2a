"""Frozen data with something in every field, so that one that is lost or taken for another shows.

Guarantees: what is filled twice is filled alike; no two words and no two numbers of one filling are
the same, and a word is the name of its field with a number. Bare, whatever may be absent is; one
field may be otherwise, and all others are as they were.
Refuses: to know which figures fit each other; what must, is given.
"""

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import is_dataclass
from datetime import UTC, date, datetime, timedelta
from enum import Enum
from fractions import Fraction
from functools import cache
from pathlib import Path
from types import NoneType, UnionType
from typing import Any, Literal, TypeVar, Union, get_args, get_origin, get_type_hints

from msgspec import Struct

from ledger.domain.entries import Note
from ledger.domain.evidence.seals import Seal
from ledger.service.bench.draws import Proposed
from ledger.service.evidence.verify import Audit
from ledger.service.lots.dossier import Dossier
from ledger.service.lots.journal import Said

T = TypeVar("T")
LATER = {"Seal": Seal, "Dossier": Dossier, "Proposed": Proposed, "Said": Said, "Audit": Audit}
"""Types that some modules name only for the type checker."""
Route = tuple[str, ...]
"""The fields that lead to one, by name."""
BEGIN = datetime(2026, 3, 1, 9, tzinfo=UTC)
FITTING: dict[str, Any] = {
    "on": "2026-03-04",
    "last_sent": "2026-03-05",
    "time_zone": "Europe/Dublin",
    "digits": 2,
    "about": "60",
}
"""Fields that cannot be any word or any number."""
NOTHING, ONE, BEFORE, OTHER = "nothing", "one", "as the number before", "all other"
"""How a field may be otherwise, beside the values of a choice."""


def filled(kind: type[T], **given: Any) -> T:
    """Return a frozen class with something in every field.

    Args:
        kind: The class; one that takes a parameter is given with it.
        given: Values of fields, wherever they are met, by name.

    >>> from ledger.service.lots.trace import Carried
    >>> filled(Carried, amount=5)
    Carried(source='source 1001', target='target 1002', amount=5, measure=<Measure.UL: 'uL'>)
    """
    whole: T = Filler(given).value(kind)
    return whole


def bare(kind: type[T], **given: Any) -> T:
    """Return a frozen class with nothing where there may be nothing, and no where yes may be."""
    whole: T = Filler(given, is_bare=True).value(kind)
    return whole


class Filler:
    """Fills types, each place with the number that it had the first time."""

    def __init__(self, given: Mapping[str, Any], *, is_bare: bool = False) -> None:
        """Make ready; `given` are values of fields by name, wherever they are met."""
        self._given, self._is_bare = {**FITTING, **given}, is_bare
        self._numbers: dict[tuple[object, ...], int] = {}
        self._choices: dict[tuple[object, ...], int] = {}
        self._turns: dict[tuple[Any, ...], int] = {}
        self._before = 0
        self._open: list[Any] = []
        self._befores: dict[tuple[object, ...], int] = {}
        self._whole_values: dict[tuple[object, ...], Any] = {}
        self._way: tuple[Route, Any] | None = None
        self.ways: dict[tuple[Route, Any], None] = {}
        """What may be otherwise: the route to a field, and how."""

    def value(self, kind: Any, name: str = "", way: tuple[Route, Any] | None = None) -> Any:
        """Return a type filled, with one field otherwise if asked.

        Args:
            kind: The type.
            name: What it is called.
            way: A route to a field, and how that is otherwise; `OTHER`: all below it is.

        >>> filler = Filler({})
        >>> filler.value(str | None, "name"), filler.ways
        ('name 1001', {(('name',), 'nothing'): None})
        >>> filler.value(str | None, "name", (("name",), NOTHING))
        >>> filler.value(int, "count", (("count",), OTHER)), filler.value(int, "count")
        (6002, 1002)
        """
        self._way, self._before = way, 0
        return self._value(kind, (name,) if name else (), {})

    def _value(self, kind: Any, path: tuple[Any, ...], known: Mapping[Any, Any]) -> Any:
        """Return the value of a place: the one that it had, unless another was asked for there."""
        if self._way and path in self._whole_values and not self._leads_to(path):
            return self._whole_values[path]
        value = self._new(kind, path, known)
        if not self._way:
            self._whole_values[path] = value
        return value

    def _leads_to(self, path: tuple[Any, ...]) -> bool:
        route, way = _route(path), self._way[0] if self._way else ()
        return all(mine == theirs for mine, theirs in zip(route, way, strict=False))

    def _new(self, kind: Any, path: tuple[Any, ...], known: Mapping[Any, Any]) -> Any:
        name = next((part for part in reversed(path) if isinstance(part, str)), "")
        if name in self._given:
            return self._given[name]
        kind = known.get(kind, kind)
        if isinstance(kind, TypeVar):  # an entry of any kind
            kind = Note
        whole, parts = get_origin(kind) or kind, get_args(kind)
        if whole in (Union, UnionType):
            return self._either(parts, path, known)
        if whole is Literal or issubclass(whole, Enum):
            return self._choice(parts or tuple(whole), path)
        if issubclass(whole, Struct) or is_dataclass(whole) or hasattr(whole, "_fields"):
            return self._whole(whole, [known.get(part, part) for part in parts], path)
        if issubclass(whole, Mapping):
            if self._is(path, NOTHING):
                return {}
            key = self._value(parts[0], (*path, "key"), known)
            return {key: self._value(parts[1], (*path, "value"), known)}
        if (issubclass(whole, Sequence | frozenset) and whole not in PLAIN) or whole in (
            Iterable,
            Collection,
        ):
            return self._many(whole, parts, path, known)
        return self._plain(whole, path, name)

    def _is(self, path: tuple[Any, ...], *ways: Any) -> Any:
        """Return which of some ways a place is asked to be otherwise in, and note them."""
        route = _route(path)
        if not self._way:
            self.ways |= dict.fromkeys((route, way) for way in ways)
        return next((way for way in ways if self._way == (route, way)), None)

    def _is_other(self, path: tuple[Any, ...]) -> bool:
        return self._way is not None and self._way == (_route(path)[: len(self._way[0])], OTHER)

    def _either(self, parts: Sequence[Any], path: tuple[Any, ...], known: Mapping[Any, Any]) -> Any:
        kind = next(part for part in parts if part is not NoneType)
        if NoneType in parts and (self._is_bare or kind in self._open or self._is(path, NOTHING)):
            return None
        return self._new(kind, path, known)

    def _many(self, whole: Any, parts: Any, path: tuple[Any, ...], known: Mapping[Any, Any]) -> Any:
        made = frozenset if whole is frozenset else tuple
        if whole is tuple and parts[-1] is not Ellipsis:
            return made(self._value(part, (*path, at), known) for at, part in enumerate(parts))
        way = NOTHING if parts[0] in self._open else self._is(path, NOTHING, ONE)
        count = 0 if self._is_bare or way == NOTHING else 1 if way == ONE else 2
        return made(self._value(parts[0], (*path, at), known) for at in range(count))

    def _whole(self, whole: Any, parts: Sequence[Any], path: tuple[Any, ...]) -> Any:
        known = dict(zip(getattr(whole, "__parameters__", ()), parts, strict=False))
        names = whole._fields if hasattr(whole, "_fields") else whole.__match_args__
        hints = _hints(whole)
        self._open.append(whole)
        told = {name: self._value(hints[name], (*path, name), known) for name in names}
        self._open.pop()
        return whole(**told)

    def _choice(self, members: tuple[Any, ...], path: tuple[Any, ...]) -> Any:
        if path not in self._choices:
            turn = self._turns.get(members, 0)
            self._turns[members] = turn + 1
            self._choices[path] = turn
        told = members[(self._choices[path] + self._is_other(path)) % len(members)]
        return self._is(path, *members) or told

    def _plain(self, whole: type, path: tuple[Any, ...], name: str) -> Any:
        number = self._numbers.setdefault(path, 1001 + len(self._numbers))
        before = self._befores.setdefault(path, self._before)
        if BEFORE in WAYS.get(whole, ()):
            self._before = number
        way = self._is(path, *WAYS.get(whole, ()))
        if way == NOTHING:
            return whole()
        is_other = self._is_other(path)
        told = {ONE: 1, BEFORE: before}.get(way, number + 5000 * is_other)
        return PLAIN[whole](told, name, self._is_bare is is_other)


def _route(path: tuple[Any, ...]) -> Route:
    return tuple(part for part in path if isinstance(part, str))


@cache
def _hints(whole: Any) -> Mapping[str, Any]:
    return get_type_hints(whole, localns=LATER)


WAYS: Mapping[type, Sequence[str]] = {
    str: [NOTHING],
    bool: [NOTHING],
    int: [NOTHING, ONE, BEFORE],
    float: [NOTHING, BEFORE],
    Fraction: [NOTHING, BEFORE],
}
"""How a field of a type may be otherwise."""
PLAIN: Mapping[type, Callable[[int, str, bool], Any]] = {
    str: lambda number, name, _: f"{name} {number}",
    object: lambda number, name, _: f"{name} {number}",
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
