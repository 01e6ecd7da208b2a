"""What each command makes of its words and options: whom it asks, and what it hands on.

Guarantees: nothing is asked in earnest; whatever a command calls beyond its own module notes who
was called and with what, in the order of the calls, and answers with something of that name.
Refuses: to say how words of a shell become those of a command, which `asked` keeps.
"""

import builtins
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, fields, is_dataclass
from inspect import Parameter, isfunction, ismodule, signature
from pathlib import Path
from types import FunctionType, ModuleType
from typing import Any, get_args, get_type_hints

from ledger.errors import LedgerError

ASKED = ("cli.screens", "cli.kit", "ledger.s", "reports", "tzlocal")
"""Beginnings of the modules whose functions note their calls in place of doing them."""
BESIDE: dict[str, tuple[tuple[str, ...], ...]] = {
    "export": (("key_data",), ("epcis",)),
    "label": (
        *(("lot", "out"), ("lot", "out", "also"), ("lot", "used"), ("out", "calibrate")),
        *(("lot", "out", "kind"), ("lot", "out", "kind", "also")),
    ),
    "limits": (("code",), ("code", "value")),
    "sheet": (("lot",), ("formula",), ("blank_csv",)),
    "start": (("formula",), ("from_plan",)),
    "stock": (("low",), ("spirit",)),
    "import_": (("path",), ("path", "like"), ("book",)),
}
"""Options of a module's command that other ones go with; those are given beside them too."""
LEFT_OUT = ("bench",)
"""What asks an evening, and not a function."""


def handed(module: ModuleType) -> Iterator[str]:
    """Yield what each command of a module makes of what it needs, of each option, and of all."""
    for function in list(vars(module).values()):
        if isfunction(function) and function.__module__ == module.__name__:
            kinds = get_type_hints(function)
            is_command = next(iter(kinds), "") == "call" and not function.__name__.startswith("_")
            if is_command and function.__name__ not in LEFT_OUT:
                yield from _of_command(module, function, kinds)


def _of_command(module: ModuleType, function: Any, kinds: dict[str, Any]) -> Iterator[str]:
    parts = dict(list(signature(function).parameters.items())[1:])
    given = {name: _value(name, kinds[name]) for name in parts}
    needed = tuple(name for name, part in parts.items() if part.default is Parameter.empty)
    for beside in ((), *BESIDE.get(module.__name__.rpartition(".")[2], ())):
        known = {name: given[name] for name in (*needed, *beside)}
        bare = _calls(module, function, known)
        yield " ".join((function.__name__, *known))
        yield from (f"  {line}" for line in bare)
        for name in (name for name in given if name not in known):
            other = _calls(module, function, {**known, name: given[name]})
            yield f"  and {name}" if other != bare else f"  and {name}: the same"
            yield from (f"    {line}" for line in other if line not in bare)
    yield f"{function.__name__}, all"
    yield from (f"  {line}" for line in _calls(module, function, given))


def _value(name: str, kind: Any) -> Any:
    """Return what is given for a word or an option, by the kind that it is of."""
    for part in (kind, *get_args(kind)):
        if part in (list[str], tuple[str, ...]):
            return [name, "more"]
        if part == list[int]:
            return [1, 2]
        if part in (bool, int, Path):
            return {bool: True, int: 7, Path: Path(name)}[part]
    return name


def _calls(module: ModuleType, function: Any, words: dict[str, Any]) -> list[str]:
    """Return whom a command calls; where it refuses the words, what it says."""
    listener = Listener()
    names: dict[str, Any] = {}

    def import_(name: str, *rest: Any) -> Any:
        found = builtins.__import__(name, *rest)
        return _Module(found, listener) if name.startswith(ASKED) else found

    names["__builtins__"] = {**vars(builtins), "__import__": import_}
    for name, value in vars(module).items():
        if name == "__builtins__":
            continue
        is_own = isfunction(value) and value.__module__ == module.__name__
        names[name] = _copy(value, names) if is_own else listener.of(value)
    try:
        _copy(function, names)(Call(), **words)
    except LedgerError as error:
        return [*listener.lines, *(f"refused: {what} {todo}" for what, todo in error.problems)]
    return listener.lines


def _copy(function: Any, names: dict[str, Any]) -> Callable[..., Any]:
    """Return a function that finds other names than its own module has."""
    copied = FunctionType(
        function.__code__, names, function.__name__, function.__defaults__, function.__closure__
    )
    copied.__kwdefaults__ = function.__kwdefaults__
    return copied


@dataclass(frozen=True, slots=True)
class Reply:
    """What somebody who was called answers: its name, and whatever is asked of that."""

    name: str

    def __getattr__(self, name: str) -> "Reply":
        return Reply(f"{self.name}.{name}")

    def __iter__(self) -> Iterator["Reply"]:
        return iter((Reply(f"{self.name}, each"),))

    def __repr__(self) -> str:
        return f"<{self.name}>"


class Call:
    """A call of a command that opens no book."""

    json, ledger, where, writer, by = False, "ledger", "where", "writer", "by"

    def book(self) -> Reply:
        """Return the book."""
        return Reply("book")

    def how(self) -> Reply:
        """Return who writes, and how it is known."""
        return Reply("how")

    def __str__(self) -> str:
        return "the call"


@dataclass(slots=True)
class Listener:
    """Notes who is called with what."""

    lines: list[str] = field(default_factory=list)

    def of(self, value: Any) -> Any:
        """Return what stands in place of a function or a module; of all else, itself."""
        if ismodule(value) and value.__name__.startswith(ASKED):
            return _Module(value, self)
        if not isfunction(value) or not value.__module__.startswith(ASKED):
            return value
        room = value.__module__ if value.__module__ != "tzlocal.unix" else "tzlocal"
        name = f"{room}.{value.__name__}"

        def called(*args: Any, **words: Any) -> Reply:
            self.lines.append(name)
            for key, item in [
                *((str(at), item) for at, item in enumerate(args, 1)),
                *words.items(),
            ]:
                self.lines += [f"  {line}" for line in self.told(key, item)]
            return Reply(value.__name__)

        called.__name__ = name
        return called

    def told(self, name: str, value: Any) -> Iterator[str]:
        """Yield what is handed on: its parts; or, of what would be done later, whom it asks."""
        if isinstance(value, FunctionType) and value.__name__ == "<lambda>":
            yield f"{name}, to do"
            yield from (f"  {line}" for line in self._done(value))
        elif isinstance(value, FunctionType):
            yield f"{name} {value.__name__}"
        elif parts := _parts(value):
            yield f"{name} {type(value).__name__}"
            for key, item in parts.items():
                yield from (f"  {line}" for line in self.told(key, item))
        else:
            yield f"{name} {value if isinstance(value, Path | Call) else repr(value)}"

    def _done(self, work: FunctionType) -> list[str]:
        before = len(self.lines)
        answer = work(*(Reply(name) for name in signature(work).parameters))
        done = self.lines[before:]
        del self.lines[before:]
        return [*done, *self.told("answers", answer)]


def _parts(value: Any) -> Mapping[str, Any]:
    """Return the parts of what has names for them; of all else none."""
    if is_dataclass(value) and not isinstance(value, type | Reply):
        return {part.name: getattr(value, part.name) for part in fields(value)}
    if isinstance(value, tuple) and hasattr(value, "_asdict"):
        return dict(value._asdict())
    return value if isinstance(value, Mapping) else {}


class _Module:
    """A module whose functions note their calls."""

    def __init__(self, module: ModuleType, listener: Listener) -> None:
        self._module, self._listener = module, listener

    def __getattr__(self, name: str) -> Any:
        return self._listener.of(getattr(self._module, name))
