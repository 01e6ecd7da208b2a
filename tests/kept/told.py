"""What was told, as lines of text: frozen data, rows and lines alike, to be kept whole.

Guarantees: a field stands under the key that machines read.
"""

from collections.abc import Iterator, Mapping, Sequence, Set
from typing import Any

from msgspec import Struct
from msgspec.structs import fields


def told(name: str, value: Any) -> Iterator[str]:
    """Yield a value below its name, each field and each row in a line of its own.

    >>> list(told("rows", [("a", "b"), ("c", None)]))
    ['rows', '  a | b', '  c | None']
    >>> list(told("what", {"lot": "A-1", "on": ()}))
    ['what', '  lot: A-1', '  on: -']
    """
    if isinstance(value, Set) and len(value) > 1:  # whose order is another one each time
        value = sorted(map(str, value))
    if isinstance(value, Struct):
        value = {field.encode_name: getattr(value, field.name) for field in fields(value)}
    if isinstance(value, Mapping):
        yield name
        for key, item in value.items():
            yield from (f"  {line}" for line in told(str(key), item))
    elif _is_many(value) and not value:
        yield f"{name}: -"
    elif _is_many(value):
        yield name
        for item in value:
            yield from (f"  {line}" for line in _item(item))
    else:
        yield f"{name}: {value}"


def _is_many(value: Any) -> bool:
    return isinstance(value, Sequence) and not isinstance(value, str | bytes)


def _item(item: Any) -> Iterator[str]:
    if isinstance(item, Struct | Mapping):
        yield from told("-", item)
    elif _is_many(item) and not any(_is_many(cell) or isinstance(cell, Struct) for cell in item):
        yield " | ".join(map(str, item))
    elif _is_many(item):
        yield from told("-", item)
    else:
        yield str(item)
