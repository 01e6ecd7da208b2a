"""The shape of every entry's fields, read once from its class.

Guarantees: one description serves the canonical text, the tables, corrections and papers, so they
cannot drift apart. Refuses: a field whose type the book has no column for.
"""

from datetime import date, datetime
from enum import StrEnum
from types import NoneType, UnionType
from typing import Annotated, Any, Union, get_args, get_origin, get_type_hints

from msgspec import Struct

from ledger.domain.amounts.quantity import Quantity

SCALES: dict[str, tuple[int, str]] = {
    "_mg_per_l": (1_000_000, "g/mL"),
    "_mdegc": (1_000, "°C"),
    "_mpct": (1_000, "%"),
    "_minor": (100, ""),
    "_milli": (1_000, ""),
    "_micro": (1_000_000, ""),
    "_nm": (1_000, "µm"),
    "_pa": (1_000, "kPa"),
    "_mg": (1_000, "g"),
    "_ppm": (10_000, "%"),
}
"""Ending of an integer field's name: how many of it make one of the unit people write."""


class FieldSpec(Struct, frozen=True):
    """What one field of an entry is."""

    name: str
    """Its name in the class, the table and the canonical text."""
    shape: type
    """str, int, bool, date, datetime, Quantity, a StrEnum, or the class of its child rows."""
    is_optional: bool
    """Whether it may be absent."""
    is_many: bool
    """Whether it is a tuple of child rows."""
    refers_to: str | None
    """lot, person, material or entry, when it names one."""
    is_signed: bool
    """Whether a number may be below zero."""
    may_be_nothing: bool = False
    """Whether an amount may be nothing."""
    is_beside: bool = False
    """Whether it stands beside the text of an entry that has a commitment to it."""
    is_given: bool = False
    """Whether the book gives it, and nobody types it."""

    @property
    def may_lack(self) -> bool:
        """Whether a text, and the row of it, may be without."""
        return self.is_optional or self.is_beside

    @property
    def plain_name(self) -> str:
        """The name without the unit's ending, as people type it.

        >>> FieldSpec("temp_mdegc", int, True, False, None, True).plain_name
        'temp'
        """
        ending = scale_ending(self.name)
        return self.name[: -len(ending)] if ending else self.name


def scale_ending(name: str) -> str | None:
    """Return the ending of `name` that says its unit, the longest first, or None."""
    return next((ending for ending in SCALES if name.endswith(ending)), None)


_MARKS = ("signed", "or nothing", "beside", "given")
"""Marks of a field that name nothing in the book."""
_KNOWN: dict[type[Struct], tuple[FieldSpec, ...]] = {}


def specs(facts_class: type[Struct]) -> tuple[FieldSpec, ...]:
    """Return the fields of a class of facts in their order; read once for each class."""
    if facts_class not in _KNOWN:
        hints = get_type_hints(facts_class, include_extras=True)
        _KNOWN[facts_class] = tuple(
            _spec(name, hints[name]) for name in facts_class.__struct_fields__
        )
    return _KNOWN[facts_class]


def _spec(name: str, hint: Any) -> FieldSpec:  # noqa: ANN401 - a type hint has no common type
    base, is_optional = _without_none(hint)
    marks: tuple[str, ...] = ()
    if get_origin(base) is Annotated:
        base, *rest = get_args(base)
        marks = tuple(rest)
    is_many = get_origin(base) is tuple
    if is_many:
        base = get_args(base)[0]
    spec = FieldSpec(
        name=name,
        shape=base,
        is_optional=is_optional,
        is_many=is_many,
        refers_to=next((mark for mark in marks if mark not in _MARKS), None),
        is_signed="signed" in marks,
        may_be_nothing="or nothing" in marks,
        is_beside="beside" in marks,
        is_given="given" in marks,
    )
    _check(spec)
    return spec


def _without_none(hint: Any) -> tuple[Any, bool]:  # noqa: ANN401
    if get_origin(hint) not in (Union, UnionType):
        return hint, False
    rest = [part for part in get_args(hint) if part is not NoneType]
    return rest[0], True


def _check(spec: FieldSpec) -> None:
    plain = (str, int, bool, date, datetime, Quantity)
    if not (spec.is_many or spec.shape in plain or issubclass(spec.shape, StrEnum)):
        raise TypeError(f"The field {spec.name} has a type that the book cannot store.")
