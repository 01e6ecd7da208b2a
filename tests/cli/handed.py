"""What each command makes of its words and options: whom it asks, and what it hands on.

Guarantees: nothing is asked in earnest; whatever a command calls beyond its own module notes who
was called and with what, in the order of the calls, and answers with something of that name.
Refuses: to say how words of a shell become those of a command, which `asked` keeps.
"""

import builtins
import re
from collections.abc import Callable, Iterator, Mapping
from contextlib import ExitStack
from dataclasses import dataclass, field, fields, is_dataclass
from inspect import Parameter, isfunction, ismodule, signature
from pathlib import Path
from types import FunctionType, GeneratorType, ModuleType
from typing import Any, get_args, get_type_hints

import typer

from cli.kit.call import Call as RealCall
from ledger.errors import LedgerError

ASKED = ("cli.screens", "cli.kit", "ledger.s", "ledger.t", "reports", "tests.cli", "tzlocal")
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
LATER = dict.fromkeys(
    ("Group", "InitAnswer", "Layout", "StartAnswer", "LabelAnswer", "Book", "How"), object
)
"""What some modules name only for the type checker."""
ROOT = Path(__file__).parents[2]
_AT = re.compile(r" object at 0x[0-9a-f]+")
IMPOSSIBLE = (AttributeError, LookupError, OSError, StopIteration, TypeError, ValueError)
"""What comes of looking further into an answer than it has names."""
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
    given = {name: value_of(name, kinds[name]) for name in parts}
    needed = tuple(name for name, part in parts.items() if part.default is Parameter.empty)
    for beside in ((), *BESIDE.get(module.__name__.rpartition(".")[2], ())):
        known = {name: given[name] for name in (*needed, *beside)}
        bare = calls(module, function, {"call": Call(), **known})
        yield " ".join((function.__name__, *known))
        yield from (f"  {line}" for line in bare)
        for name in (name for name in given if name not in known):
            other = calls(module, function, {"call": Call(), **known, name: given[name]})
            yield f"  and {name}" if other != bare else f"  and {name}: the same"
            yield from (f"    {line}" for line in other if line not in bare)
    yield f"{function.__name__}, all"
    yield from (f"  {line}" for line in calls(module, function, {"call": Call(), **given}))


def value_of(name: str, kind: Any) -> Any:
    """Return what is given for a word, an option or an argument, by the kind that it is of."""
    for part in (kind, *get_args(kind)):
        if part in (list[str], tuple[str, ...]):
            return [name, "more"]
        if part == list[int]:
            return [1, 2]
        if part in (bool, int, Path):
            return {bool: True, int: 7, Path: Path(name)}[part]
        if part is RealCall:
            return Call()
        if getattr(part, "__module__", "").startswith("cli.screens."):
            hints = get_type_hints(part, localns=LATER)
            names = getattr(part, "_fields", None) or [each.name for each in fields(part)]
            return part(**{each: value_of(each, hints[each]) for each in names})
    return name if str in (kind, *get_args(kind)) else Reply(name)


def calls(module: ModuleType, function: Any, words: dict[str, Any]) -> list[str]:
    """Return whom a command calls; where it refuses the words, what it says."""
    listener = Listener()
    names: dict[str, Any] = {}

    def import_(name: str, *rest: Any) -> Any:
        found = builtins.__import__(name, *rest)
        return _Module(found, listener) if name.startswith(ASKED) else found

    instead = {"__import__": import_, "print": listener.of(printed)}
    names["__builtins__"] = {**vars(builtins), **instead}
    for name, value in vars(module).items():
        if name == "__builtins__":
            continue
        names[name] = _copy(value, names) if _is_own(value, module) else listener.of(value)
    try:
        _copy(function, names)(**words)
    except LedgerError as error:
        return [*listener.lines, *(f"refused: {what} {todo}" for what, todo in error.problems)]
    except typer.Exit as ended:
        return [*listener.lines, f"exit code {ended.exit_code}"]
    except IMPOSSIBLE:
        return [*listener.lines, "and looks into what was answered"]
    return listener.lines


def printed(*_words: object, **_how: object) -> None:
    """Stand for the function that prints."""


def _is_own(value: Any, module: ModuleType) -> bool:
    return isfunction(value) and value.__module__ == module.__name__


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

    def __call__(self, *_: object, **_how: object) -> "Reply":
        return Reply(f"{self.name}()")

    def __getitem__(self, key: object) -> "Reply":
        return Reply(f"{self.name}[{key}]")

    def __add__(self, other: object) -> "Reply":
        return Reply(f"{self.name} + {other}")

    def __sub__(self, other: object) -> "Reply":
        return Reply(f"{self.name} - {other}")

    def __lt__(self, other: object) -> bool:
        return False

    def __format__(self, _form: str) -> str:
        return repr(self)

    def __len__(self) -> int:
        return 1

    def __enter__(self) -> "Reply":
        return self

    def __exit__(self, *_: object) -> None:
        """End nothing."""

    def __iter__(self) -> Iterator["Reply"]:
        return iter((Reply(f"{self.name}, each"),))

    def __repr__(self) -> str:
        return f"<{self.name}>"


class Call:
    """A call of a command that opens no book."""

    ledger, where, writer, by, because, held = "ledger", "where", "writer", "by", "because", None

    def __init__(self, *, is_json: bool = False) -> None:
        """Make one, for machines if asked."""
        self.json, self.at_end = is_json, ExitStack()
        self.books: list[Any] = []

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
        elif isinstance(value, FunctionType | type):
            yield f"{name} {value.__name__}"
        elif parts := _parts(value):
            yield f"{name} {type(value).__name__}"
            for key, item in parts.items():
                yield from (f"  {line}" for line in self.told(key, item))
        else:
            value = list(value) if isinstance(value, GeneratorType) else value
            plain = str(value) if isinstance(value, Path | Call) else repr(value)
            yield f"{name} {_AT.sub('', plain).replace(f'{ROOT}/', '')}"

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
