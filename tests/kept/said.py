"""What functions say of frozen data that is all there, that is bare, and one field after the other.

Guarantees: what is kept is all that is said of the whole, and for each field that is otherwise the
lines that are other for it; where only a figure is another one, that one is not kept. Refuses: to
say whether data can be so; where a function refuses it, that is kept, and where it cannot be read,
nothing is.
"""

import ast
import re
from collections.abc import Callable, Iterator, Mapping, Set
from decimal import Context
from difflib import ndiff
from enum import EnumType
from functools import cache
from inspect import Parameter, getsource, isfunction, signature
from types import ModuleType
from typing import Any, get_type_hints

from ledger.errors import LedgerError
from tests.kept.filled import LATER, OTHER, Filler, Route
from tests.kept.golden import check_golden
from tests.kept.told import told

IMPOSSIBLE = (ArithmeticError, AttributeError, LookupError, RuntimeError, TypeError, ValueError)
"""What comes of data that never is."""


def check_constants(module: ModuleType) -> None:
    """Fail unless the tables, figures, words and defaults that a module names are what is kept."""
    kept = module.__name__.replace(".", "/")
    told_of = (*_constants(module), *_defaults(module))
    check_golden(f"named/{kept}.txt", "".join(f"{line}\n" for line in told_of))


def _defaults(module: ModuleType) -> Iterator[str]:
    """Yield what fields of classes and arguments of functions are where nothing is said."""
    for node in ast.parse(getsource(module)).body:
        value: Any = getattr(module, getattr(node, "name", ""), None)
        if isinstance(node, ast.ClassDef | ast.FunctionDef) and not isinstance(value, EnumType):
            takes = signature(value).parameters.items()
            plain = (f"{name}={item.default!r}" for name, item in takes if _is_plain(item.default))
            if said := ", ".join(plain):
                yield f"{node.name}: {said}"


def _is_plain(default: object) -> bool:
    return default is None or type(default) in (bool, int, float, str)


def _constants(module: ModuleType) -> Iterator[str]:
    for node in ast.parse(getsource(module)).body:
        names = node.targets if isinstance(node, ast.Assign) else [getattr(node, "target", None)]
        each = (part for name in names for part in (getattr(name, "elts", None) or [name]))
        for name in (part.id for part in each if isinstance(part, ast.Name)):
            value = getattr(module, name)
            if name.isupper() and not isinstance(value, type):
                yield from told(name, _plain(value))


def _plain(value: Any) -> Any:
    """Return a value as it can be told: a set in order, of a pattern its text.

    >>> _plain({"b", "a"}), _plain(re.compile("a+")), _plain({1: {"x"}})
    (['a', 'b'], 'a+', {1: ['x']})
    """
    if isinstance(value, Set):
        return sorted(map(str, value))
    if isinstance(value, re.Pattern):
        return value.pattern
    if isinstance(value, Context):  # which also notes what was reckoned by it
        return f"{value.prec} figures, {value.rounding}"
    if isinstance(value, Mapping):
        return {key: _plain(item) for key, item in value.items()}
    return value.__qualname__ if callable(value) else value


def check_said(module: ModuleType, *left_out: str, **given: Any) -> None:
    """Fail unless the functions of a module say of filled data what is kept.

    Args:
        module: The module; what its functions take is filled by the types that they name.
        left_out: Functions that are left out.
        given: Values of fields and of what functions take, wherever they are met, by name.
    """
    lines = (
        line
        for name, function in vars(module).items()
        if isfunction(function) and function.__module__ == module.__name__
        if not name.startswith("_") and name not in left_out
        for line in _all(function, given)
    )
    kept = module.__name__.removeprefix("reports.").replace(".", "/")
    check_golden(f"said/{kept}.txt", "".join(f"{line}\n" for line in lines))


def _all(function: Callable[..., Any], given: dict[str, Any]) -> Iterator[str]:
    hints = get_type_hints(function, localns=LATER)
    kinds = {name: hints[name] for name in signature(function).parameters}
    whole, none = Filler(given), Filler(given, is_bare=True)
    said = _lines(function, _values(whole, kinds))
    yield from _told(f"{function.__name__}, all", said)
    yield from _told(f"{function.__name__}, bare", _lines(function, _values(none, kinds)))

    @cache
    def is_read(route: Route) -> bool:
        return _lines(function, _values(whole, kinds, (route, OTHER))) != said

    for route, how in list(whole.ways):
        if all(is_read(route[:end]) for end in range(1, len(route))):
            lines = _lines(function, _values(whole, kinds, (route, how)))
            if lines and not _is_echo(said, lines, route[-1]):
                other = [line for line in ndiff(said, lines) if line[0] in "+-"]
                yield from _told(f"{function.__name__}, {'.'.join(route)}: {how}", other)


def _values(
    filler: Filler, kinds: dict[str, Any], way: tuple[Route, Any] | None = None
) -> dict[str, Any]:
    return {name: filler.value(kind, name, way) for name, kind in kinds.items()}


def _told(head: str, lines: list[str]) -> Iterator[str]:
    yield head
    yield from (f"  {line}" for line in lines)


def _is_echo(said: list[str], lines: list[str], name: str) -> bool:
    """Say whether lines are other only by a figure, or by a word that is left out.

    >>> _is_echo(["1,002 bottles of name 7"], ["1 bottles of "], "name")
    True
    >>> _is_echo(["2 bottles"], ["1 bottle"], "count")
    False
    """
    without = [re.sub(rf"{name} \d+", "", line) for line in said]
    return _shape(lines) in (_shape(said), _shape(without))


def _lines(function: Callable[..., Any], values: dict[str, Any]) -> list[str]:
    kinds = signature(function).parameters
    named = {name for name, kind in kinds.items() if kind.kind is Parameter.KEYWORD_ONLY}
    try:
        said = function(
            *(value for name, value in values.items() if name not in named),
            **{name: value for name, value in values.items() if name in named},
        )
        return list(told("said", list(said) if isinstance(said, Iterator) else said))
    except LedgerError as error:
        return [f"refused: {error}"]
    except IMPOSSIBLE:
        return []


def _shape(lines: list[str]) -> list[str]:
    """Return lines with all figures alike.

    >>> _shape(["1,002 bottles, 1 broken"])
    ['# bottles, # broken']
    """
    return [re.sub(r"[\d.,]*\d", "#", line) for line in lines]
