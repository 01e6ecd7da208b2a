"""Reading a command's words before its options are told apart.

Guarantees: a figure below zero reaches the command, which says what is wrong with it; what an
option was called before still works, with a remark. Refuses: unknown options, as ever.
"""

import re
from collections.abc import Mapping, Sequence
from typing import Any

import typer
from typer.core import TyperCommand

OLD_NAMES: dict[str, dict[str, str]] = {
    "add": {"--over": "--took"},
    "suspects": {"--since": "--from"},
    "start": {"--print": "--out"},
    "plan": {"--print": "--out"},
}
"""What options were called before the same idea had the same name everywhere, by command."""
_BELOW_ZERO = re.compile(r"-[.,]?\d", re.ASCII)
MINUS = "\N{MINUS SIGN}"


class Verb(TyperCommand):
    """A command whose amounts and readings may be written with a minus sign."""

    def __init__(self, *args: Any, **settings: Any) -> None:  # noqa: ANN401 - of any command
        """Name what each option takes after the option."""
        super().__init__(*args, **settings)
        for parameter in self.params:
            if parameter.metavar is None and parameter.name and not is_switch(parameter):
                parameter.metavar = placeholder(parameter.name, parameter.nargs)

    def parse_args(self, ctx: typer.Context, args: list[str]) -> list[str]:  # type: ignore[override]
        """Parse the words; a figure such as -18 is no option, and an old name is understood."""
        told = with_new_names(args, OLD_NAMES.get(self.name or "", {}))
        # Completion parses too, and machines read what stands on standard error.
        if not (ctx.resilient_parsing or "--json" in args or ctx.find_root().params.get("json")):
            for old, new in zip(args, told, strict=True):
                if old != new:
                    name, now = old.partition("=")[0], new.partition("=")[0]
                    typer.echo(f"Note: {name} is called {now} now; {name} still works.", err=True)
        return super().parse_args(ctx, with_minus_signs(told))


def with_new_names(args: Sequence[str], names: Mapping[str, str]) -> list[str]:
    """Write options by their names of today, but for what stands after the end of options.

    >>> with_new_names(["--over=5min", "--as", "top-up", "--", "--over"], {"--over": "--took"})
    ['--took=5min', '--as', 'top-up', '--', '--over']
    """
    end = args.index("--") if "--" in args else len(args)
    parts = [arg.partition("=") for arg in args[:end]]
    return [*("".join((names.get(name, name), *rest)) for name, *rest in parts), *args[end:]]


def placeholder(name: str, nargs: int) -> str:
    """Return what stands in the help for the words a person gives.

    >>> placeholder("added_as", 1), placeholder("amount", -1)
    ('ADDED-AS', 'AMOUNT ...')
    """
    return name.replace("_", "-").upper() + (" ..." if nargs < 0 else "")


def is_switch(parameter: object) -> bool:
    """Return whether an option is given without a value."""
    return bool(getattr(parameter, "is_flag", False))


def with_minus_signs(args: Sequence[str]) -> list[str]:
    """Write the hyphen before a figure as a minus sign, but for what an option takes.

    >>> with_minus_signs(["OE-001-5", "-30mL", "--at", "-2h"])
    ['OE-001-5', '−30mL', '--at', '-2h']
    """
    before = ["", *args]
    return [
        MINUS + arg[1:] if _BELOW_ZERO.match(arg) and not last.startswith("-") else arg
        for last, arg in zip(before, args, strict=False)
    ]
