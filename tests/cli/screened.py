"""What each screen asks for and prints, told without a book: whom it calls with what.

Guarantees: of a screen's functions all calls beyond their own module are kept, of what it needs, of
each option beside that, of all, and of the same for machines. Refuses: to go on where an answer is
looked into further than a name, since nobody gave one.
"""

from collections.abc import Iterator
from importlib import import_module
from inspect import Parameter, isfunction, signature
from typing import Any, get_type_hints

from tests.cli.handed import LATER, Call, calls, value_of
from tests.held_by import HELD_BY

ENDLESS = ("keep_watching",)
"""What goes on until somebody ends it."""


def screens_of(command: str) -> list[str]:
    """Return the screens that are held beside a command, as their modules are called."""
    test = f"tests/cli/commands/test_{command}.py"
    held = (module for module, (by, _) in HELD_BY.items() if by == test)
    return [name.removesuffix(".py") for name in held if name.startswith("cli/screens/")]


def screened(screen: str) -> Iterator[str]:
    """Yield what each function of a screen calls."""
    module = import_module(screen.replace("/", "."))
    for function in list(vars(module).values()):
        if not isfunction(function) or function.__module__ != module.__name__:
            continue
        asks = {"call", "book"} & signature(function).parameters.keys()
        if asks and not function.__name__.startswith("_") and function.__name__ not in ENDLESS:
            yield from _of_function(module, function)


def _of_function(module: Any, function: Any) -> Iterator[str]:
    kinds = get_type_hints(function, localns=LATER)
    parts = signature(function).parameters
    given = {name: value_of(name, kinds.get(name, Any)) for name in parts}
    needed = {
        name: None if _may_be_none(kinds.get(name)) else False if kinds.get(name) is bool else item
        for name, item in given.items()
        if parts[name].default is Parameter.empty
    }
    bare = calls(module, function, needed)
    yield from (function.__name__, *(f"  {line}" for line in bare))
    for name, item in given.items():
        if needed.get(name) != item:
            other = calls(module, function, {**needed, name: item})
            yield f"  and {name}" if other != bare else f"  and {name}: the same"
            yield from (f"    {line}" for line in other if line not in bare)
    yield f"{function.__name__}, all"
    yield from (f"  {line}" for line in calls(module, function, given))
    if "call" in given:
        yield f"{function.__name__}, for machines"
        for_machines = {**given, "call": Call(is_json=True)}
        yield from (f"  {line}" for line in calls(module, function, for_machines))


def _may_be_none(kind: Any) -> bool:
    return type(None) in getattr(kind, "__args__", ())
