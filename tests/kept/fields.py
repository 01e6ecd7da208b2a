"""Answers told field by field, as lines of text that can be kept.

Guarantees: what an answer reckons of its fields is told with them; a part that is the same as one
before is told by the place of that. Refuses: what an entry or a lot within an answer says.
"""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from msgspec import Struct

from ledger.domain.entries import Entry
from ledger.domain.lots.lot import Lot

MOST_AGAIN = 2
"""Lines of a part that are told again where it is the same."""


class Told:
    """What was told so far; a part that is the same as one before is told by the place of that."""

    def __init__(self) -> None:
        """Begin with nothing."""
        self._parts: dict[tuple[str, ...], str] = {}

    def lines(self, asked: str, path: str, value: Any) -> Iterator[str]:
        """Yield each field of an answer by its path, and what is reckoned of the fields."""
        if isinstance(value, Entry):
            yield f"{path}: entry {value.seq}"
        elif isinstance(value, Lot) and path:
            yield f"{path}: lot {value.code}"
        elif isinstance(value, Struct):
            names = (*value.__struct_fields__, *_reckoned(type(value)))
            part = [
                line
                for name in names
                for line in self.lines(asked, f".{name}", getattr(value, name))
            ]
            yield from self._part(asked, path, part)
        elif isinstance(value, Mapping):
            for key in sorted(value, key=str):
                yield from self.lines(asked, f"{path}[{_short(key)}]", value[key])
        elif isinstance(value, frozenset | set):
            yield f"{path}: {{{', '.join(sorted(map(_short, value)))}}}"
        elif isinstance(value, Sequence) and not isinstance(value, str | bytes):
            if all(isinstance(item, str | int | float | None) for item in value):
                yield f"{path}: {', '.join(map(_short, value)) or 'none'}"
                return
            for number, item in enumerate(value):
                yield from self.lines(asked, f"{path}[{number}]", item)
        else:
            yield f"{path}: {_short(value)}"

    def _part(self, asked: str, path: str, part: Sequence[str]) -> Iterator[str]:
        first = self._parts.setdefault(tuple(part), f"{asked}{path}")
        if first != f"{asked}{path}" and len(part) > MOST_AGAIN:
            yield f"{path}: as {first}"
        else:
            yield from (f"{path}{line}" for line in part)


def _reckoned(kind: type) -> list[str]:
    return [
        name
        for above in reversed(kind.__mro__)
        for name, what in vars(above).items()
        if isinstance(what, property) and not name.startswith("_")
    ]


def _short(value: object) -> str:
    """Return a value as it stands, a figure to six places of those that count."""
    if isinstance(value, float):
        return f"{value:.6g}"
    return value.hex()[:12] if isinstance(value, bytes) else str(value)
