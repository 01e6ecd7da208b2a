"""Every figure, word and default that the ledger names is kept in one list, to be read over.

A threshold of the trade, a choice as it is written in a book, what a field or an argument is where
nothing is said: each stands once in the source, and a change of it shows as one line here.
"""

import ast
import importlib
import inspect
import re
from collections.abc import Iterator, Mapping, Sequence
from enum import Enum
from fractions import Fraction
from pathlib import Path
from types import ModuleType
from typing import Any

from msgspec import NODEFAULT, Struct

from tests.kept.golden import check_golden

ROOT = Path(__file__).parent.parent
MOST = 2**64
"""No figure is larger; what is, is a table in one number."""
PLAIN = (int, float, str, bytes, Fraction, type(None))
STATEMENT = re.compile(r"\b(SELECT|INSERT|UPDATE|CREATE|RAISE|JOIN)\b")
"""Statements of the database are no figures; what they find is kept elsewhere."""


def test_what_the_ledger_names_is_what_was_named() -> None:
    """Renew with ``POTTLE_GOLDEN=write`` and read the difference."""
    check_golden("named.txt", "".join(f"{line}\n" for line in _told()))


def _told() -> Iterator[str]:
    for path in sorted((ROOT / "ledger").rglob("*.py")):
        name = ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")
        if ".migrations" in name or name.endswith("__main__"):
            continue
        module = importlib.import_module(name)
        lines = [line for word in _own(path) for line in _of(module, word)]
        if lines:
            yield from (name, *(f"  {line}" for line in lines))


def _own(path: Path) -> Iterator[str]:
    """Yield the names that a module gives itself, in their order."""
    for node in ast.parse(path.read_text(encoding="utf-8")).body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            yield node.name
        elif isinstance(node, ast.Assign | ast.AnnAssign):
            targets = node.targets if isinstance(node, ast.Assign) else [node.target]
            yield from (one.id for each in targets for one in ast.walk(each)
                        if isinstance(one, ast.Name))  # fmt: skip


def _of(module: ModuleType, word: str) -> Iterator[str]:
    value = getattr(module, word, None)
    if isinstance(value, type) and issubclass(value, Enum):
        yield f"{word}: {', '.join(f'{one.name}={one.value!r}' for one in value)}"
    elif isinstance(value, type) and issubclass(value, Struct):
        yield from _defaults(word, _fields(value))
    elif inspect.isfunction(value):
        yield from _defaults(word, inspect.signature(value).parameters.items())
    elif word.isupper() and isinstance(value, Mapping):
        lines = [(_said(key), _said(item)) for key, item in value.items()]
        yield from (f"{word}[{key}] = {said}" for key, said in lines if key and said)
    elif word.isupper() and (said := _said(value)) and not STATEMENT.search(said):
        yield f"{word} = {said}"


def _fields(kind: type[Struct]) -> Iterator[tuple[str, Any]]:
    defaults = kind.__struct_defaults__
    names = kind.__struct_fields__[len(kind.__struct_fields__) - len(defaults) :]
    return zip(names, defaults, strict=True)


def _defaults(word: str, named: Any) -> Iterator[str]:
    told = [
        f"{name}={said}"
        for name, what in named
        if (default := getattr(what, "default", what)) not in (inspect.Parameter.empty, NODEFAULT)
        and (said := _said(default))
    ]
    if told:
        yield f"{word}: {', '.join(told)}"


def _said(value: object) -> str:
    """Return a value that is plain, or made of plain ones; "" of any other."""
    if isinstance(value, Enum):
        return str(value)
    if isinstance(value, re.Pattern):
        return repr(value.pattern)
    if isinstance(value, int) and abs(value) > MOST:
        return ""
    if isinstance(value, PLAIN):
        return repr(value)
    if isinstance(value, frozenset | set):
        return _joined(sorted(map(_said, value)))
    if isinstance(value, Mapping):
        return _joined([f"{_said(key)}: {_said(item)}" for key, item in value.items()])
    if isinstance(value, Struct):
        return _joined([_said(getattr(value, name)) for name in value.__struct_fields__])
    if isinstance(value, Sequence):
        return _joined([_said(item) for item in value])
    return ""


def _joined(said: list[str]) -> str:
    return "{" + ", ".join(said) + "}" if all(said) else ""
